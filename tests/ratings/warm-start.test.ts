import { describe, expect, it } from 'vitest';
import { fitBag, rateBag } from '../../src/ratings/bag-model.ts';
import { startFrom } from '../../src/ratings/fit-ratings.ts';
import { demoVenue } from '../demo/demo-venue.ts';

const demo = demoVenue().venue;
/** Matches of the demo's first years: enough to tell, and soon fitted. */
const venue = { ...demo, sessions: demo.sessions.slice(0, 1200) };

describe('a fit that starts from another', () => {
  // Four digits of a worth and of its doubt are printed nowhere; two are.
  it.each(['total', 'carp'])(
    'tells the worth of one that starts from nothing: %s',
    (bag) => {
      const cold = fitBag(venue, bag);
      const start = startFrom(fitBag({ ...venue, sessions: venue.sessions.slice(0, -30) }, bag).fit);
      const warm = fitBag(venue, bag, {}, { start });
      expect(cold.fit.stopped).toBe('converged');
      expect(warm.fit.stopped).toBe('converged');
      expect(warm.fit.iterations).toBeLessThan(cold.fit.iterations);
      const there = rateBag(venue, warm).pegMonths;
      rateBag(venue, cold).pegMonths.forEach(({ logWorth, sd }, i) => {
        expect(Math.abs(there[i]!.logWorth - logWorth)).toBeLessThan(2e-4 * sd);
        expect(Math.abs(there[i]!.sd / sd - 1)).toBeLessThan(2e-4);
      });
    },
    300_000,
  );
});
