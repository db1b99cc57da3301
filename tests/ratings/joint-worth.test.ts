import { describe, expect, test } from 'vitest';
import { jointPegWorth } from '../../src/ratings/joint-worth.ts';
import { rateVenue } from '../../src/ratings/rate-venue.ts';
import { simulateFromModel } from '../demo/simulate-from-model.ts';

const { venue } = simulateFromModel({
  seed: 21,
  waters: 1,
  pegs: 14,
  anglers: 30,
  events: 60,
  features: 3,
  dnwShare: 0.1,
});
const ratings = rateVenue(venue, { seed: 1 });
const JUNE = 6;

describe('jointPegWorth', () => {
  test('tells of each peg what is published of it, also where the ratings spare it learning what they learned', () => {
    const published = venue.pegs.map(
      ({ peg }) => ratings.bags[0]!.pegMonths.find((row) => row.peg === peg && row.month === JUNE)!,
    );
    const spared = jointPegWorth(venue, venue.pegs, JUNE, ratings);
    const size = venue.pegs.length;
    published.forEach(({ worth, high80 }, i) => {
      expect(spared.logMean[i]).toBeCloseTo(Math.log(worth), 3);
      // Half of an 80% interval is 1.2816 standard deviations of a normal one.
      expect(Math.sqrt(spared.covariance[i * size + i]!)).toBeCloseTo(Math.log(high80 / worth) / 1.2816, 3);
    });
    const learned = jointPegWorth(venue, venue.pegs, JUNE);
    spared.logMean.forEach((mean, i) => {
      expect(mean).toBeCloseTo(learned.logMean[i]!, 1);
    });
  }, 60_000);
});
