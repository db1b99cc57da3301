import { expect, test } from 'vitest';
import { fishHours, hoursByMonth } from '../../src/atlas/fish-hours.ts';
import type { HourWeight } from '../../src/domain/hour-weight.ts';
import type { FishingEvent } from '../../src/domain/session.ts';
import { exampleVenue } from '../domain/example-venue.ts';

const WATER = exampleVenue().waters[0]!.id;
const event = (id: string, day: string, changes: Partial<FishingEvent> = {}): FishingEvent => ({
  id,
  day,
  water: WATER,
  kind: 'match',
  hours: 5,
  listing: 'full',
  framePlaces: 3,
  conditions: {},
  ...changes,
});
const hour = (of: string, number: number, weightGrams: number, part = 'total'): HourWeight => ({
  event: of,
  peg: '1',
  hour: number,
  part,
  weightGrams,
});

test('a water without hours says so by having no month', () => {
  expect(fishHours(exampleVenue(), WATER)).toMatchObject({ months: [], leftOut: '' });
});

test('tells the shares of a month and the two about it, thin where matches are few, and months without any', () => {
  const venue = exampleVenue({
    events: [event('a', '2025-12-20'), event('b', '2026-01-10')],
    hours: [hour('a', 1, 300, 'carp'), hour('a', 1, 100, 'silvers'), hour('a', 5, 1200, 'carp'), hour('b', 5, 2000)],
  });
  const { months } = fishHours(venue, WATER);
  const january = months.find(({ month }) => month === 1)!;
  expect(january.from).toBe('December to February: from 2 bags of 2 matches. Thin: so few matches may mislead.');
  expect(january.words).toContain('hour 1 13%, hour 2 0%');
  expect(january.words).toContain('hour 5 88%; too few matches for an interval');
  const june = months.find(({ month }) => month === 6)!;
  expect(june).toMatchObject({ drawing: null, words: 'Nobody has logged hours here in May to July.' });
  // A fish of November is no fish of December's neighbour in spring.
  expect(months.find(({ month }) => month === 11)!.from).toContain('one match');
});

test('gives the same in figures, for the months that somebody logged', () => {
  const venue = exampleVenue({ events: [event('a', '2026-01-03')], hours: [hour('a', 1, 100), hour('a', 5, 300)] });
  const months = hoursByMonth(venue, WATER);
  expect(months.map(({ month }) => month)).toEqual([1, 2, 12]);
  expect(months[0]).toMatchObject({ about: 'December to February', bags: 1, matches: 1, isThin: true });
  expect(months[0]!.shares.map(({ share }) => share)).toEqual([0.25, 0, 0, 0, 0.75]);
  expect(hoursByMonth(exampleVenue(), WATER)).toEqual([]);
});

test('reads matches of the usual length, and says what is left out', () => {
  const venue = exampleVenue({
    events: [
      event('a', '2026-01-03'),
      event('b', '2026-01-10'),
      event('c', '2026-01-17', { hours: 6 }),
      event('d', '2026-01-18', { kind: 'pleasure' }),
      event('e', '2026-01-18', { water: 'elsewhere' }),
    ],
    hours: ['a', 'b', 'c', 'd', 'e'].map((id) => hour(id, 2, 500)),
  });
  const { months, leftOut } = fishHours(venue, WATER);
  expect(months[0]!.from).toContain('from 2 bags of 2 matches. Not in it: 1 bag of matches of another length.');
  expect(leftOut).toBe('Not in it: 1 bag of chosen days, whose hours begin when the angler came.');
});

test('keeps matches of four and a half hours and of five apart, and says that the last hour of the shorter is half of one', () => {
  const venue = exampleVenue({
    events: [
      event('a', '2026-01-03', { hours: 4.5 }),
      event('b', '2026-01-10', { hours: 4.5 }),
      event('c', '2026-01-17'),
    ],
    hours: [hour('a', 5, 500), hour('b', 5, 500), hour('c', 1, 500)],
  });
  const { months, leftOut } = fishHours(venue, WATER);
  expect(months[0]!.from).toBe(
    'December to February: from 2 bags of 2 matches. They lasted 4.5 hours: hour 5 is 30 minutes. Not in it: 1 bag of matches of another length. Thin: so few matches may mislead.',
  );
  expect(leftOut).toBe('');
  expect(hoursByMonth(venue, WATER)[0]).toMatchObject({ matchHours: 4.5, bags: 2 });
  // Of as many of each the shorter is told, and never both as one.
  const even = exampleVenue({ ...venue, hours: [hour('a', 5, 500), hour('c', 1, 500)] });
  expect(hoursByMonth(even, WATER)[0]!.shares.map(({ share }) => share)).toEqual([0, 0, 0, 0, 1]);
});

test('goes by the length most usual in the months it tells of: winter matches are shorter', () => {
  const venue = exampleVenue({
    events: [
      event('winter', '2026-01-03', { hours: 4.5 }),
      ...['2025-06-07', '2025-06-14'].map((day, index) => event(`summer-${index}`, day)),
    ],
    hours: ['winter', 'summer-0', 'summer-1'].map((id) => hour(id, 2, 500)),
  });
  const told = hoursByMonth(venue, WATER).map(({ month, matchHours }) => [month, matchHours]);
  expect(told).toEqual([1, 2, 5, 6, 7, 12].map((month) => [month, month > 2 && month < 12 ? 5 : 4.5]));
});
