import { describe, expect, it } from 'vitest';
import { hourShares, MATCHES_FOR_INTERVAL } from '../../src/ratings/hour-shares.ts';
import { HOURS_MATCHES, hoursCoverage, simulatedBags } from '../coverage/hours-coverage.ts';
import { seededChance } from '../demo/chance.ts';

describe('the share of a bag by hour', () => {
  it.each(HOURS_MATCHES)(
    'of %d simulated matches finds the truth, which its intervals hold as often as they say',
    (matches) => {
      const { share, leans } = hoursCoverage(matches, 160);
      // Four in five by what they say.
      expect(share).toBeGreaterThan(0.74);
      expect(share).toBeLessThan(0.86);
      for (const lean of leans) expect(Math.abs(lean)).toBeLessThan(0.015);
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
    const bags = simulatedBags(MATCHES_FOR_INTERVAL, seededChance(2));
    expect(hourShares(bags, 5)).toEqual(hourShares(bags, 5));
    expect(hourShares(bags, 5).every(({ interval }) => interval !== null)).toBe(true);
    expect(hourShares(simulatedBags(MATCHES_FOR_INTERVAL - 1, seededChance(2)), 5)[0]!.interval).toBeNull();
    expect(hourShares([], 5)).toEqual([]);
  });
});
