import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { chanceBelow, daySpread, valueAt } from '../../src/ratings/day-spread.ts';
import type { LatentFit } from '../../src/ratings/engine/latent-model.ts';

const spreads = fc.array(fc.double({ min: -4, max: 2, noNaN: true }), { minLength: 3, maxLength: 20 });

describe('days that are no normal', () => {
  test('a value and its chance belong together', () => {
    fc.assert(
      fc.property(
        spreads,
        fc.double({ min: -3, max: 3, noNaN: true }),
        fc.double({ min: 0.2, max: 2, noNaN: true }),
        fc.double({ min: 0.02, max: 0.98, noNaN: true }),
        (days, mean, sd, probability) => {
          const value = valueAt(days, mean, sd, probability);
          expect(chanceBelow(days, mean, sd, value)).toBeCloseTo(probability, 6);
        },
      ),
    );
  });

  test('one day alone is a normal about it', () => {
    // Φ⁻¹(0.75), Abramowitz and Stegun, table 26.5.
    expect(valueAt([0.5], 1, 2, 0.75)).toBeCloseTo(1.5 + 2 * 0.674489750196082, 6);
  });

  test('a value between two far apart kinds of day is found where the curve is flat', () => {
    // Half of all days lie ten sds below the other half: between them the chance is 0.5 and tells no slope to go by.
    for (const probability of [0.3, 0.4999, 0.5001, 0.7]) {
      const value = valueAt([-10, 10], 0, 1, probability);
      expect(chanceBelow([-10, 10], 0, 1, value)).toBeCloseTo(probability, 9);
    }
    // Φ⁻¹(0.6) = 0.2533471, of the lower half of days.
    expect(valueAt([-10, 10], 0, 1, 0.3)).toBeCloseTo(-10 + 0.2533471031357997, 6);
  });

  function fitWith(sd: number, days: readonly number[]): LatentFit {
    return { sd: { event: sd }, effects: () => Float64Array.from(days) } as unknown as LatentFit;
  }

  test('few days are taken as normal about nothing', () => {
    const spread = daySpread(fitWith(0.7, [3, -9]));
    expect(spread.reduce((sum, day) => sum + day, 0)).toBeCloseTo(0, 9);
    expect(Math.max(...spread)).toBeLessThan(0.7 * 2.2);
  });

  test('one day in twenty that hardly feeds leaves the middle with the other nineteen', () => {
    const days = Array.from({ length: 100 }, (_, i) => (i % 20 === 0 ? -3.8 : 0.2));
    const spread = daySpread(fitWith(0.9, days));
    expect(valueAt(spread, 0, 0.5, 0.5)).toBeGreaterThan(0.1);
    expect(Math.min(...spread)).toBeLessThan(-3);
  });
});
