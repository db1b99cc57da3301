import { describe, expect, it } from 'vitest';
import { type HourBag, hourShares, MATCHES_FOR_INTERVAL } from '../../src/ratings/hour-shares.ts';
import { type Chance, seededChance } from '../demo/chance.ts';

/** What the simulated days are drawn about: fish come late. */
const TRUTH = [0.1, 0.1, 0.15, 0.25, 0.4];

/** Shares that scatter about others without leaning (gamma draws of whole shape, scaled: a Dirichlet distribution). */
function scattered(shares: readonly number[], concentration: number, chance: Chance): readonly number[] {
  const drawn = shares.map((share) => {
    const shape = Math.max(1, Math.round(share * concentration));
    return Array.from({ length: shape }, () => -Math.log(1 - chance.uniform())).reduce((sum, value) => sum + value, 0);
  });
  const total = drawn.reduce((sum, value) => sum + value, 0);
  return drawn.map((value) => value / total);
}

function simulated(matches: number, chance: Chance): readonly HourBag[] {
  return Array.from({ length: matches }, (_, index) => {
    const day = scattered(TRUTH, 20, chance);
    return Array.from({ length: chance.whole(1, 6) }, () => {
      const grams = chance.between(500, 20_000);
      return { match: `m${index}`, gramsByHour: scattered(day, 100, chance).map((share) => share * grams) };
    });
  }).flat();
}

describe('the share of a bag by hour', () => {
  it.each([4, 8, 16])(
    'of %d simulated matches finds the truth, which its intervals hold as often as they say',
    (matches) => {
      const chance = seededChance(11);
      const venues = 160;
      let held = 0;
      let asked = 0;
      const errors = TRUTH.map(() => 0);
      for (let venue = 0; venue < venues; venue++) {
        hourShares(simulated(matches, chance), venue).forEach(({ share, interval }, hour) => {
          asked++;
          errors[hour]! += (share - TRUTH[hour]!) / venues;
          if (interval![0] <= TRUTH[hour]! && TRUTH[hour]! <= interval![1]) held++;
        });
      }
      // Four in five by what they say.
      expect(held / asked).toBeGreaterThan(0.74);
      expect(held / asked).toBeLessThan(0.86);
      for (const error of errors) expect(Math.abs(error)).toBeLessThan(0.015);
    },
  );

  it('counts each bag alike, passes over bags of nothing, and adds up to one', () => {
    const shares = hourShares(
      [
        { match: 'a', gramsByHour: [10_000, 0] },
        { match: 'a', gramsByHour: [0, 100] },
        { match: 'b', gramsByHour: [0, 0] },
      ],
      1,
    );
    expect(shares).toEqual([
      { share: 0.5, interval: null },
      { share: 0.5, interval: null },
    ]);
  });

  it('says no interval of few matches, none of no bag, and the same by the same seed', () => {
    const bags = simulated(MATCHES_FOR_INTERVAL, seededChance(2));
    expect(hourShares(bags, 5)).toEqual(hourShares(bags, 5));
    expect(hourShares(bags, 5).every(({ interval }) => interval !== null)).toBe(true);
    expect(hourShares(simulated(MATCHES_FOR_INTERVAL - 1, seededChance(2)), 5)[0]!.interval).toBeNull();
    expect(hourShares([], 5)).toEqual([]);
  });
});
