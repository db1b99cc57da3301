import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { choleskyInPlace, paddedSize, solveCholeskyInPlace } from '../../../src/ratings/engine/cholesky.ts';
import { inverseFromCholesky } from '../../../src/ratings/engine/inverse.ts';

/** A symmetric positive definite matrix with known structure, padded with the identity. */
function exampleMatrix(size: number, seed: number): { matrix: Float64Array; padded: number } {
  const padded = paddedSize(size);
  const matrix = new Float64Array(padded * padded);
  for (let i = 0; i < padded; i++) {
    for (let j = 0; j < padded; j++) {
      if (i >= size || j >= size) matrix[i * padded + j] = i === j ? 1 : 0;
      else matrix[i * padded + j] = Math.exp(-Math.abs(i - j) / 5) + (i === j ? 1 + ((i * seed) % 7) / 7 : 0);
    }
  }
  return { matrix, padded };
}

/** Plain textbook factorisation, to hold the blocked one against. */
function textbookLogDeterminant(matrix: Float64Array, size: number): number {
  const l = matrix.slice();
  let sum = 0;
  for (let j = 0; j < size; j++) {
    for (let k = 0; k < j; k++) l[j * size + j] = l[j * size + j]! - l[j * size + k]! ** 2;
    sum += Math.log(l[j * size + j]!);
    l[j * size + j] = Math.sqrt(l[j * size + j]!);
    for (let i = j + 1; i < size; i++) {
      for (let k = 0; k < j; k++) l[i * size + j] = l[i * size + j]! - l[i * size + k]! * l[j * size + k]!;
      l[i * size + j] = l[i * size + j]! / l[j * size + j]!;
    }
  }
  return sum;
}

// Sizes on both sides of the tile (4), the narrow panel (16) and the blocks (32, 128), and off every multiple.
const SIZES = [1, 2, 3, 4, 5, 15, 16, 17, 31, 32, 33, 64, 100, 127, 128, 129, 150, 261];

describe('the blocked Cholesky factor', () => {
  it.each(SIZES)('multiplies back to the matrix of size %i', (size) => {
    const { matrix, padded } = exampleMatrix(size, 3);
    const factor = matrix.slice();
    const logDeterminant = choleskyInPlace(factor, padded);
    let worst = 0;
    for (let i = 0; i < padded; i++) {
      for (let j = 0; j <= i; j++) {
        let sum = 0;
        for (let k = 0; k <= j; k++) sum += factor[i * padded + k]! * factor[j * padded + k]!;
        worst = Math.max(worst, Math.abs(sum - matrix[i * padded + j]!));
      }
    }
    expect(worst).toBeLessThan(1e-13);
    expect(logDeterminant).toBeCloseTo(textbookLogDeterminant(matrix, padded), 10);
  });

  it.each(SIZES)('gives the inverse of size %i, its lower triangle', (size) => {
    const { matrix, padded } = exampleMatrix(size, 5);
    const factor = matrix.slice();
    choleskyInPlace(factor, padded);
    const inverse = new Float64Array(padded * padded);
    inverseFromCholesky(inverse, factor, padded);
    let worst = 0;
    for (let i = 0; i < padded; i++) {
      for (let j = 0; j < padded; j++) {
        let sum = 0;
        for (let k = 0; k < padded; k++) {
          sum += matrix[i * padded + k]! * inverse[Math.max(k, j) * padded + Math.min(k, j)]!;
        }
        worst = Math.max(worst, Math.abs(sum - (i === j ? 1 : 0)));
      }
    }
    expect(worst).toBeLessThan(1e-12);
  });

  it('solves what it factored, whatever the right-hand side', () => {
    fc.assert(
      fc.property(
        fc
          .integer({ min: 1, max: 70 })
          .chain((size) =>
            fc.tuple(
              fc.constant(size),
              fc.integer({ min: 1, max: 50 }),
              fc.array(fc.double({ min: -1e6, max: 1e6, noNaN: true }), { minLength: size, maxLength: size }),
            ),
          ),
        ([size, seed, right]) => {
          const { matrix, padded } = exampleMatrix(size, seed);
          const factor = matrix.slice();
          choleskyInPlace(factor, padded);
          const x = Float64Array.from(right);
          solveCholeskyInPlace(factor, padded, x);
          for (let i = 0; i < size; i++) {
            let sum = 0;
            for (let k = 0; k < size; k++) sum += matrix[i * padded + k]! * x[k]!;
            expect(Math.abs(sum - right[i]!)).toBeLessThan(1e-7);
          }
        },
      ),
      { numRuns: 40 },
    );
  });

  it('says which pivot was not positive', () => {
    const matrix = Float64Array.from([1, 2, 0, 0, 2, 1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1]);
    expect(() => choleskyInPlace(matrix, 4)).toThrow('matrix is not positive definite: pivot -3 in row 1 of 4');
  });
});
