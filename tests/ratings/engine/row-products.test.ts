import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { productKernel } from '../../../src/ratings/engine/product-kernel.ts';
import {
  subtractBesideTilesInPlace,
  subtractPlainlyInPlace,
  subtractRowProductsInPlace,
} from '../../../src/ratings/engine/row-products.ts';

/** A square matrix of numbers of many sizes, some of them zero, from a seed. */
function exampleMatrix(size: number, seed: number): Float64Array {
  return Float64Array.from({ length: size * size }, (_, k) => {
    const wave = Math.sin((k + 1) * (seed + 0.37));
    return k % 17 === 0 ? 0 : wave * 10 ** ((k * seed) % 9) * (k % 2 === 0 ? 1e-4 : 1);
  });
}

/** Bounds of a product in tiles: the sums run over what lies left of the rows' and columns' own places, as in a factor. */
const products = fc.record({
  seed: fc.integer({ min: 1, max: 1000 }),
  kFrom: fc.integer({ min: 0, max: 9 }),
  depth: fc.integer({ min: 0, max: 300 }),
  columnTiles: fc.integer({ min: 1, max: 20 }),
  rowTiles: fc.integer({ min: 3, max: 24 }),
  isLower: fc.boolean(),
});

describe('the product kernel', () => {
  it('is there on the runtime that this project carries', () => {
    expect(productKernel()).not.toBeNull();
  });

  it('gives the numbers of plain code to the last bit', () => {
    fc.assert(
      fc.property(products, ({ seed, kFrom, depth, columnTiles, rowTiles, isLower }) => {
        const from = (kFrom + depth + 3) & ~3;
        const size = from + 4 * Math.max(columnTiles, rowTiles);
        const matrix = exampleMatrix(size, seed);
        const plain = matrix.slice();
        const bounds = [
          from,
          from + 4 * rowTiles,
          from,
          from + 4 * columnTiles,
          kFrom,
          kFrom + depth,
          isLower,
        ] as const;
        subtractRowProductsInPlace(matrix, size, ...bounds);
        subtractPlainlyInPlace(plain, size, ...bounds);
        expect(Buffer.from(matrix.buffer).equals(Buffer.from(plain.buffer))).toBe(true);
      }),
      { numRuns: 60 },
    );
  });

  it('gives what the formula says', () => {
    const size = 24;
    const matrix = exampleMatrix(size, 5).map((value) => Math.round(value * 100) % 50);
    const expected = matrix.slice();
    for (let r = 8; r < 24; r++) {
      for (let c = 8; c < 24; c++) {
        for (let k = 1; k < 8; k++)
          expected[r * size + c] = expected[r * size + c]! - matrix[r * size + k]! * matrix[c * size + k]!;
      }
    }
    subtractRowProductsInPlace(matrix, size, 8, 24, 8, 24, 1, 8, false);
    // Whole numbers, so that no order of the sums rounds.
    expect([...matrix]).toEqual([...expected]);
  });
});

/** A block of rows, the columns it meets, and how far its sums run: shorter and longer than what the kernel sums at once. */
const blocks = fc.record({
  seed: fc.integer({ min: 1, max: 1000 }),
  before: fc.integer({ min: 0, max: 12 }),
  rowTiles: fc.integer({ min: 1, max: 8 }),
  depthTiles: fc.integer({ min: 0, max: 140 }),
  columnTiles: fc.integer({ min: 1, max: 20 }),
  /** Columns are never among what the sums run over: those before the block, its own before each tile, or those after the sums. */
  columns: fc.constantFrom('before', 'own', 'after'),
});

it('sums beside tiles are those of plain code, a tile after another, to the last bit', () => {
  fc.assert(
    fc.property(blocks, ({ seed, before, rowTiles, depthTiles, columnTiles, columns }) => {
      const rowFrom = 4 * before;
      const rowTo = rowFrom + 4 * rowTiles;
      const kTo = rowTo + 4 * depthTiles;
      const isBefore = columns === 'own';
      const columnFrom = { before: 0, own: rowFrom, after: kTo }[columns];
      const columnTo = { before: rowFrom, own: rowTo, after: kTo + 4 * columnTiles }[columns];
      const size = Math.max(kTo, columnTo);
      const matrix = exampleMatrix(size, seed);
      const plain = matrix.slice();
      subtractBesideTilesInPlace(matrix, size, rowFrom, rowTo, columnFrom, columnTo, kTo, isBefore);
      for (let tile = rowFrom; tile < rowTo; tile += 4) {
        const last = isBefore ? tile : columnTo;
        subtractPlainlyInPlace(plain, size, tile, tile + 4, columnFrom, last, tile + 4, kTo, false);
      }
      expect(Buffer.from(matrix.buffer).equals(Buffer.from(plain.buffer))).toBe(true);
    }),
    { numRuns: 60 },
  );
});
