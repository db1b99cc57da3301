import { describe, expect, test } from 'vitest';
import { framingMonths } from '../../src/ratings/framing-months.ts';
import { exampleVenue } from '../domain/example-venue.ts';
import { exampleEvent, exampleSession } from './example-log.ts';

const weighed = (event: string, ...kilograms: number[]) =>
  kilograms.map((weight, i) => exampleSession(event, String(i + 1), 'weighed', weight * 1000));
const june = (rows: ReturnType<typeof framingMonths>) => rows.find(({ month }) => month === 6);

describe('framingMonths', () => {
  test('takes the middle event of a month, with the least and the most', () => {
    const venue = exampleVenue({
      events: [exampleEvent('a'), exampleEvent('b'), exampleEvent('c', { listing: 'frame' })],
      sessions: [...weighed('a', 9, 4, 1), ...weighed('b', 20, 12, 3), ...weighed('c', 6, 5)],
    });
    expect(june(framingMonths(venue))).toEqual({
      water: 'pit',
      month: 6,
      events: 3,
      mostlyFrom: null,
      frameKg: 5,
      winKg: 9,
      frameLowKg: 4,
      frameHighKg: 12,
      winLowKg: 6,
      winHighKg: 20,
    });
  });

  test('speaks of now: matches from before the fish were twice as many count little', () => {
    const days = ['2024-06-02', '2024-06-09', '2025-06-01', '2026-06-07', '2026-06-14'];
    const kilograms = [4, 5, 4.5, 9, 10];
    const venue = exampleVenue({
      events: days.map((day, i) => exampleEvent(`e-${i}`, { day })),
      sessions: kilograms.flatMap((weight, i) => weighed(`e-${i}`, 2 * weight, weight, 1)),
    });
    const level = { water: 'pit', sd: 0.1, low80: 0.4, high80: 0.6 };
    const levels = [
      { ...level, from: '2024-05-01', until: '2026-05-30', events: 40, logLevel: -Math.log(2) },
      { ...level, from: '2026-06-01', until: '2026-11-01', events: 20, logLevel: 0, sd: 0 },
    ];
    const row = june(framingMonths(venue, { levels, eventSd: 0.4 }))!;
    expect(june(framingMonths(venue))).toMatchObject({ frameKg: 5, mostlyFrom: null });
    expect(row.frameKg).toBeGreaterThan(7.5);
    expect(row).toMatchObject({
      events: 5,
      mostlyFrom: { day: '2026-06-07', events: 2, levelThen: null },
      frameLowKg: 9,
      frameHighKg: 10,
    });
    const old = { ...venue, events: venue.events.slice(0, 3) };
    expect(june(framingMonths(old, { levels, eventSd: 0.4 }))).toMatchObject({
      frameKg: 4.5,
      mostlyFrom: { day: '2024-06-02', events: 3, levelThen: 0.5 },
    });
    // The fit cannot tell the years apart: they count as before.
    const untold = levels.map((each) => ({ ...each, logLevel: 0, sd: 0 }));
    expect(june(framingMonths(venue, { levels: untold, eventSd: 0.4 }))).toEqual(june(framingMonths(venue)));
  });

  test('says nothing of the weight to frame where fewer weighed than there are places', () => {
    const venue = exampleVenue({ events: [exampleEvent('a')], sessions: weighed('a', 9) });
    expect(june(framingMonths(venue))).toMatchObject({ events: 1, frameKg: null, winKg: 9 });
  });

  test('tells frame and win of a match over several waters from its whole field, on each of them', () => {
    const { waters } = exampleVenue();
    const venue = exampleVenue({
      waters: [...waters, { ...waters[0]!, id: 'lake' }],
      events: [exampleEvent('a', { match: 'open' }), exampleEvent('b', { match: 'open', water: 'lake' })],
      sessions: [...weighed('a', 9, 1), ...weighed('b', 8, 7).map((session) => ({ ...session, water: 'lake' }))],
    });
    const rows = framingMonths(venue).filter(({ month }) => month === 6);
    expect(rows.map(({ water, events, frameKg, winKg }) => [water, events, frameKg, winKg])).toEqual([
      ['pit', 1, 8, 9],
      ['lake', 1, 8, 9],
    ]);
  });

  test('has a row without weights for a month without a match', () => {
    const rows = framingMonths(exampleVenue());
    expect(rows).toHaveLength(12);
    expect(rows[0]).toMatchObject({ water: 'pit', month: 1, events: 0, frameKg: null, winKg: null });
  });

  test('leaves out days on chosen pegs, which make no places', () => {
    const venue = exampleVenue({ events: [exampleEvent('a', { kind: 'pleasure' })], sessions: weighed('a', 9, 4) });
    expect(june(framingMonths(venue))?.events).toBe(0);
  });
});
