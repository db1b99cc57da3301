import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { quantile } from '../../src/ratings/quantile.ts';
import { weightedQuantile } from '../../src/ratings/weighted-quantile.ts';

const values = fc.array(fc.double({ min: 0, max: 1e6, noNaN: true }), { minLength: 1, maxLength: 20 });
const probability = fc.double({ min: 0, max: 1, noNaN: true });

describe('weightedQuantile', () => {
  test('is the plain quantile where all count the same', () => {
    fc.assert(
      fc.property(values, probability, fc.double({ min: 0.01, max: 10, noNaN: true }), (of, p, counts) => {
        const found = weightedQuantile(
          of.map((value) => ({ value, counts })),
          p,
        );
        expect(Math.abs(found - quantile(of, p))).toBeLessThan(1e-6);
      }),
    );
  });

  test('lies where most of the weight lies', () => {
    const of = [1, 2, 9, 10, 11].map((value) => ({ value, counts: value > 8 ? 1 : 0.01 }));
    expect(weightedQuantile(of, 0.5)).toBeGreaterThan(9.4);
    expect(weightedQuantile(of, 0.5)).toBeLessThan(10);
  });
});
