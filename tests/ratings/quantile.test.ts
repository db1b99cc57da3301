import { describe, expect, test } from 'vitest';
import { quantile } from '../../src/ratings/quantile.ts';

describe('quantile', () => {
  // By hand from the definition: 4 steps between 1, 3, 4, 8 and 20, so 0.1 lies 0.4 of the way from 1 to 3.
  test.each([
    [0, 1],
    [0.1, 1.8],
    [0.25, 3],
    [0.5, 4],
    [0.9, 15.2],
    [1, 20],
  ])('follows definition 7 of Hyndman and Fan at %f', (probability, expected) => {
    expect(quantile(Object.freeze([8, 1, 20, 3, 4]) as number[], probability)).toBeCloseTo(expected, 12);
  });

  test('gives the only value of a list of one', () => {
    expect(quantile([7], 0.25)).toBe(7);
  });

  test('refuses an empty list', () => {
    expect(() => quantile([], 0.5)).toThrow('quantile needs at least one value');
  });
});
