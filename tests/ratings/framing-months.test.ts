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
      frameKg: 5,
      winKg: 9,
      frameLowKg: 4,
      frameHighKg: 12,
      winLowKg: 6,
      winHighKg: 20,
    });
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
