import { describe, expect, it } from 'vitest';
import { exactProducts, triangleRow } from '../../../src/ratings/engine/exact-products.ts';

/** Three rows over three effects: (2, 0, 3), (0, 5, 7), (1, 1, 0). */
const ENTRIES = {
  rowStart: Int32Array.of(0, 2, 4, 6),
  column: Int32Array.of(0, 2, 1, 2, 0, 1),
  weight: Float64Array.of(2, 3, 5, 7, 1, 1),
};

describe('the products of exactly known rows', () => {
  it('are the lower triangle of Zᵀ Z, by rows', () => {
    expect([...exactProducts(ENTRIES, 3, () => true)]).toEqual([5, 1, 26, 6, 35, 58]);
  });

  it('leave out every row that is not known exactly', () => {
    expect([...exactProducts(ENTRIES, 3, (row) => row !== 1)]).toEqual([5, 1, 1, 6, 0, 9]);
    expect([...exactProducts(ENTRIES, 3, () => false)]).toEqual([0, 0, 0, 0, 0, 0]);
  });

  it('begin a row after all shorter ones', () => {
    expect([0, 1, 2, 3].map(triangleRow)).toEqual([0, 1, 3, 6]);
  });
});
