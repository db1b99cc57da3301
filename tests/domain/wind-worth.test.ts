import { describe, expect, test } from 'vitest';
import { isWarmMonth, worthAtFetch } from '../../src/domain/wind-worth.ts';

const curve = [
  { fetchMetres: 5, worth: 0.8, low80: 0.7, high80: 0.9 },
  { fetchMetres: 20, worth: 1, low80: 0.9, high80: 1.1 },
  { fetchMetres: 80, worth: 1.25, low80: 1.1, high80: 1.4 },
];

describe('worthAtFetch', () => {
  test('is the curve’s own at its points, and half-way in logarithms between them', () => {
    expect(worthAtFetch(curve, 20)!.worth).toBeCloseTo(1, 9);
    expect(worthAtFetch(curve, 40)!.worth).toBeCloseTo(Math.sqrt(1.25), 9);
    expect(worthAtFetch(curve, 40)!.low80).toBeCloseTo(Math.sqrt(0.9 * 1.1), 9);
  });

  test('is level beyond both ends, with no water at all as well', () => {
    expect(worthAtFetch(curve, 0)).toEqual(worthAtFetch(curve, 5));
    expect(worthAtFetch(curve, 900)).toEqual(worthAtFetch(curve, 80));
  });

  test('says nothing of a curve without points', () => {
    expect(worthAtFetch([], 20)).toBeNull();
  });
});

test('the warm half of the year is April to September', () => {
  expect([3, 4, 9, 10].map(isWarmMonth)).toEqual([false, true, true, false]);
});
