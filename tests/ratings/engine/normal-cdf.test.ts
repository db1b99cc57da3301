import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { logNormalCdf, normalCdf } from '../../../src/ratings/engine/normal-cdf.ts';
import { normalQuantile } from '../../../src/ratings/engine/normal-quantile.ts';

describe('the normal distribution', () => {
  it('gives back the chance of its quantile, in both tails', () => {
    fc.assert(
      fc.property(fc.double({ min: -690, max: -1e-9, noNaN: true }), (logProbability) => {
        const p = Math.exp(logProbability);
        // Close to 1 the chance itself is known no better than to half a unit of rounding.
        const error = Math.abs(logNormalCdf(normalQuantile(p)) - logProbability);
        expect(error).toBeLessThan(1e-12 * Math.abs(logProbability) + 4e-16);
      }),
    );
  });

  it('never falls, and its halves add up to one', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -40, max: 40, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (z, step) => {
          expect(normalCdf(z + step)).toBeGreaterThanOrEqual(normalCdf(z) * (1 - 1e-14));
          expect(normalCdf(z) + normalCdf(-z)).toBeCloseTo(1, 14);
        },
      ),
    );
  });

  it('has quantiles of infinity at the ends and refuses what is no chance', () => {
    expect(normalQuantile(0)).toBe(Number.NEGATIVE_INFINITY);
    expect(normalQuantile(1)).toBe(Number.POSITIVE_INFINITY);
    expect(normalQuantile(0.5)).toBeCloseTo(0, 16);
    expect(() => normalQuantile(1.5)).toThrow('normalQuantile needs a probability from 0 to 1, found 1.5');
    expect(() => normalQuantile(Number.NaN)).toThrow('found NaN');
  });
});
