import { describe, expect, it } from 'vitest';
import {
  orthonormalColumns,
  solveUpperSmall,
  solveUpperTransposedSmall,
} from '../../../src/ratings/engine/orthonormal-columns.ts';

const column = (...values: number[]) => Float64Array.from(values);

describe('orthonormal columns', () => {
  it('make the columns again, and leave out what depends on earlier ones', () => {
    const one = column(1, 1, 1, 1);
    const x = column(1, 2, 3, 5);
    const both = column(3, 5, 7, 11);
    const zero = column(0, 0, 0, 0);
    const { q, kept, r } = orthonormalColumns([zero, one, x, both]);
    expect(kept).toEqual([1, 2]);
    const rebuilt = Array.from({ length: 4 }, (_, i) => q[0]![i]! * r[0]![1]! + q[1]![i]! * r[1]![1]!);
    rebuilt.forEach((value, i) => {
      expect(value).toBeCloseTo(x[i]!, 12);
    });
  });

  it('keep columns of any size apart that are nearly parallel', () => {
    const big = column(1e9, 1e9, 1e9);
    const near = column(1e9, 1e9, 1e9 + 1);
    const { q, kept } = orthonormalColumns([big, near]);
    expect(kept).toEqual([0, 1]);
    const dot = q[0]!.reduce((sum, value, i) => sum + value * q[1]![i]!, 0);
    expect(Math.abs(dot)).toBeLessThan(1e-15);
  });

  it('solve with R and with R turned over', () => {
    const r = [
      [2, 1],
      [0, 4],
    ];
    expect([...solveUpperSmall(r, [4, 8])]).toEqual([1, 2]);
    expect([...solveUpperTransposedSmall(r, [2, 9])]).toEqual([1, 2]);
  });
});
