import { describe, expect, it } from 'vitest';
import { eigenSmall, solveSmall } from '../../../src/ratings/engine/small-symmetric.ts';

describe('small symmetric matrices', () => {
  it('have their eigenvectors', () => {
    const m = { count: 3, values: Float64Array.from([4, 1, 0, 1, 3, 2, 0, 2, 5]) };
    const { values, vectors } = eigenSmall(m);
    vectors.forEach((vector, k) => {
      for (let i = 0; i < 3; i++) {
        const image = vector.reduce((sum, v, j) => sum + m.values[i * 3 + j]! * v, 0);
        expect(image).toBeCloseTo(values[k]! * vector[i]!, 12);
      }
    });
    expect(values.reduce((a, b) => a + b)).toBeCloseTo(12, 12);
  });

  it('are solved whatever the units of their rows', () => {
    const values = Float64Array.from([4e12, 1e6, 1e6, 3]);
    const x = solveSmall({ count: 2, values }, [4e12 + 2e6, 1e6 + 6]);
    expect(x[0]).toBeCloseTo(1, 9);
    expect(x[1]).toBeCloseTo(2, 9);
  });

  it('give a long but finite step where they say nothing, and none where a row is empty', () => {
    const singular = solveSmall({ count: 2, values: Float64Array.from([1, 1, 1, 1]) }, [1, -1]);
    expect(singular.every(Number.isFinite)).toBe(true);
    expect(Math.abs(singular[0]!)).toBeGreaterThan(1e6);
    expect([...solveSmall({ count: 2, values: Float64Array.from([2, 0, 0, 0]) }, [4, 0])]).toEqual([2, 0]);
    expect([...solveSmall({ count: 1, values: Float64Array.of(0) }, [0])]).toEqual([0]);
  });
});
