import { describe, expect, test } from 'vitest';
import { nearestKnot, stepsAt } from '../../../src/ratings/beside/broken-stick.ts';

const KNOTS = [0.5, 1, 2, 4];

describe('stepsAt', () => {
  test('goes every step before a value, part of the one it is on, and none after', () => {
    expect(stepsAt(KNOTS, 1.5)).toEqual([1, 0.5, 0]);
    expect(stepsAt(KNOTS, 1)).toEqual([1, 0, 0]);
  });

  test('is level beyond both ends', () => {
    expect(stepsAt(KNOTS, 0)).toEqual([0, 0, 0]);
    expect(stepsAt(KNOTS, 9)).toEqual([1, 1, 1]);
  });
});

describe('nearestKnot', () => {
  test('is the knot least away, the lower of two as near', () => {
    expect([0, 0.75, 1.6, 3, 9].map((value) => nearestKnot(KNOTS, value))).toEqual([0, 0, 2, 2, 3]);
  });
});
