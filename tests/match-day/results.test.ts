import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { matchResults } from '../../src/match-day/match-results.ts';
import { placesBy } from '../../src/match-day/places.ts';
import { potShares, sharedOut } from '../../src/match-day/pot-shares.ts';
import { type PointsRule, sectionPoints } from '../../src/match-day/section-points.ts';
import type { WeighedIn, WeighedStatus } from '../../src/match-day/weighed-in.ts';

const row = (section: string, peg: string, grams: number, status: WeighedStatus = 'weighed'): WeighedIn => ({
  section,
  peg,
  grams,
  status,
});
const RULE: PointsRule = { count: 'low', ties: 'share', noWeight: 'last' };

describe('placesBy', () => {
  test('agrees with the published example of ranks with ties', () => {
    // SciPy 1.4 documentation, scipy.stats.rankdata: [0, 2, 3, 2] gives 1, 2.5, 4, 2.5, by the method "min" 1, 2, 4, 2.
    const places = placesBy([0, 2, 3, 2], (a, b) => a - b);
    expect(places.map(({ shared }) => shared)).toEqual([1, 2.5, 4, 2.5]);
    expect(places.map(({ place }) => place)).toEqual([1, 2, 4, 2]);
  });
});

describe('sectionPoints', () => {
  // Worked by hand; points of sections are common practice of clubs, no source.
  const section = [
    row('A', '1', 9000),
    row('A', '2', 4000),
    row('A', '3', 4000),
    row('A', '4', 0, 'dnw'),
    row('A', '5', 0, 'blank'),
    row('A', '6', 0, 'absent'),
  ];

  test('shares tied places, gives no weight the last place, and puts the absent behind it', () => {
    expect(sectionPoints(section, RULE)).toEqual([1, 2.5, 2.5, 6, 6, 7]);
  });

  test('follows the club’s other ways to count', () => {
    expect(sectionPoints(section, { ...RULE, ties: 'same' })).toEqual([1, 2, 2, 6, 6, 7]);
    expect(sectionPoints(section, { ...RULE, noWeight: 'share' })).toEqual([1, 2.5, 2.5, 4.5, 4.5, 7]);
    expect(sectionPoints(section, { ...RULE, count: 'high' })).toEqual([6, 4.5, 4.5, 1, 1, 0]);
  });

  test('shared points of a section add up to the same whatever ties there are', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 4 }), { minLength: 1, maxLength: 12 }), (weights) => {
        const rows = weights.map((weight, i) => row('A', String(i), weight, weight === 0 ? 'dnw' : 'weighed'));
        const points = sectionPoints(rows, { count: 'low', ties: 'share', noWeight: 'share' });
        expect(points.reduce((sum, own) => sum + own, 0)).toBeCloseTo((rows.length * (rows.length + 1)) / 2, 9);
      }),
    );
  });
});

describe('matchResults', () => {
  // Worked by hand: two sections, two places frame.
  const weighed = [
    row('A', 'p1', 12_000),
    row('A', 'p2', 9000),
    row('A', 'p3', 2000),
    row('B', 'p4', 5000),
    row('B', 'p5', 4000),
    row('B', 'p6', 0, 'dnw'),
    row('B', 'p7', 3000, 'disqualified'),
  ];

  test('by weight: the frame first, then the best of each section that does not frame', () => {
    const results = matchResults(weighed, { ...RULE, overall: 'weight', places: 2 });
    expect(results.map(({ peg, overallPlace, won }) => [peg, overallPlace, won])).toEqual([
      ['p1', 1, 'frame'],
      ['p2', 2, 'frame'],
      ['p4', 3, 'section'],
      ['p5', 4, null],
      ['p3', 5, 'default'],
      ['p6', 6, null],
      ['p7', null, null],
    ]);
  });

  test('by points: section winners first, the heavier bag ahead', () => {
    const results = matchResults(weighed, { ...RULE, overall: 'points', places: 2 });
    expect(results.slice(0, 4).map(({ peg, points }) => [peg, points])).toEqual([
      ['p1', 1],
      ['p4', 1],
      ['p2', 2],
      ['p5', 2],
    ]);
  });

  test('all who tie for the last place frame, and who caught nothing wins nothing', () => {
    const tied = [row('A', '1', 500), row('A', '2', 500), row('B', '3', 0, 'blank'), row('B', '4', 0, 'dnw')];
    const results = matchResults(tied, { ...RULE, overall: 'weight', places: 1 });
    expect(results.map(({ won }) => won)).toEqual(['frame', 'frame', null, null]);
  });
});

test('bags of the same drams tie, however they were split into nets', () => {
  fc.assert(
    fc.property(fc.array(fc.integer({ min: 1, max: 20_000 }), { minLength: 2, maxLength: 6 }), (drams) => {
      const dram = 453.59237 / 256;
      const inNets = drams.reduce((sum, net) => sum + net * dram, 0);
      const atOnce = drams.reduce((sum, net) => sum + net, 0) * dram;
      const results = matchResults([row('A', '1', inNets), row('A', '2', atOnce)], {
        ...RULE,
        overall: 'weight',
        places: 1,
      });
      expect(results.map(({ overallPlace, points, won }) => [overallPlace, points, won])).toEqual([
        [1, 1.5, 'frame'],
        [1, 1.5, 'frame'],
      ]);
    }),
  );
});

describe('shares of a pot', () => {
  test('whole coins by largest remainders agree with the worked table of the method', () => {
    // The usual table of the largest remainder method: 10 seats for 47,000, 16,000, 15,800, 12,000, 6,100 and 3,100 votes give 5, 2, 1, 1, 1, 0
    // (from memory; by hand: quotas 4.7, 1.6, 1.58, 1.2, 0.61, 0.31 leave three seats for .7, .61 and .6).
    expect(sharedOut(10, [47_000, 16_000, 15_800, 12_000, 6100, 3100])).toEqual([5, 2, 1, 1, 1, 0]);
  });

  test('who ties has the places together', () => {
    expect(potShares(10_000, [1, 2, 2, 4], [50, 30, 20])).toEqual([5000, 2500, 2500, 0]);
    expect(potShares(101, [1, 1], [60, 40])).toEqual([51, 50]);
  });

  test('no coin is lost or made', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 1e6 }),
        fc.array(fc.integer({ min: 0, max: 100 }), { minLength: 1 }),
        (coins, parts) => {
          const whole = parts.some((part) => part > 0) ? coins : 0;
          expect(sharedOut(coins, parts).reduce((sum, share) => sum + share, 0)).toBe(whole);
        },
      ),
    );
  });
});
