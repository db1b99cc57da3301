import { expect, test } from 'vitest';
import { type LeaguePoints, standings } from '../../src/match-day/standings.ts';

/** A season worked by hand: common practice of clubs, no source. Points count low; the best three of four matches count. */
const MATCHES = ['m1', 'm2', 'm3', 'm4'];
const SEASON: Readonly<Record<string, readonly (readonly [number, number] | null)[]>> = {
  // 1 + 2 + 3 = 6, the 5 dropped.
  'a-2': [
    [2, 4000],
    [1, 8000],
    [5, 500],
    [3, 3000],
  ],
  // 1 + 1 + 4 = 6: two wins against one, so ahead of a-2 by count-back.
  'a-1': [[1, 9000], [4, 1000], [1, 7000], null],
  // 3 + 4 + 7 missed = 14 like a-4, and count-back is level: the heavier season is ahead.
  'a-3': [[3, 3000], null, [4, 2000], null],
  'a-4': [[4, 2000], [3, 2000], null, null],
  // Fished once.
  'a-5': [null, null, null, [1, 9000]],
};
const POINTS: LeaguePoints[] = Object.entries(SEASON).flatMap(([angler, season]) =>
  season.flatMap((each, i) => (each === null ? [] : [{ angler, match: MATCHES[i]!, points: each[0], grams: each[1] }])),
);

test('counts the best matches, drops the rest, and settles ties by count-back, then weight', () => {
  const table = standings(MATCHES, POINTS, { count: 'low', best: 3, missed: 7 });
  expect(table.map(({ angler, place, points }) => [angler, place, points])).toEqual([
    ['a-1', 1, 6],
    ['a-2', 2, 6],
    ['a-3', 3, 14],
    ['a-4', 4, 14],
    ['a-5', 5, 15],
  ]);
  expect(table[1]!.matches.map(({ counts }) => counts)).toEqual([true, true, false, true]);
});

test('counts every match where no number is set, and many points as good where the club does', () => {
  const high = POINTS.map((row) => ({ ...row, points: 10 - row.points }));
  const table = standings(MATCHES, high, { count: 'high', best: null, missed: 0 });
  expect(table.map(({ angler, points }) => [angler, points])).toEqual([
    ['a-2', 29],
    ['a-1', 24],
    ['a-3', 13],
    ['a-4', 13],
    ['a-5', 9],
  ]);
});

test('who is level in everything shares the place', () => {
  const level = ['b', 'a'].map((angler) => ({ angler, match: 'm1', points: 2, grams: 100 }));
  expect(standings(['m1'], level, { count: 'low', best: null, missed: 9 }).map(({ place }) => place)).toEqual([1, 1]);
});
