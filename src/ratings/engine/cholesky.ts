import { solveFourRowsInPlace } from './four-rows.ts';
import { subtractRowProductsInPlace } from './row-products.ts';

const BLOCK = 128;
const NARROW = 16;

/** Smallest multiple of 4 that holds `size`: the kernels work in tiles of 4, so matrices are stored with spare rows of the identity. */
export function paddedSize(size: number): number {
  return (size + 3) & ~3;
}

/**
 * Cholesky factor L of a symmetric positive definite matrix, S = L Lᵀ, in place in the lower triangle; the upper triangle
 * is scratch afterwards. `size` is a multiple of 4 (see `paddedSize`), the matrix is stored by rows. Blocked, right-looking,
 * with a left-looking panel (Golub and Van Loan, Matrix Computations, 4th ed. 2013, 4.2.9). About size³/3 operations.
 *
 * @returns log determinant of S
 * @throws {RangeError} where a pivot is not positive: the matrix is not positive definite
 */
export function choleskyInPlace(matrix: Float64Array, size: number): number {
  let logDeterminant = 0;
  for (let block = 0; block < size; block += BLOCK) {
    const blockTo = Math.min(size, block + BLOCK);
    for (let from = block; from < blockTo; from += NARROW) {
      const to = Math.min(blockTo, from + NARROW);
      subtractRowProductsInPlace(matrix, size, from, size, from, to, block, from, true);
      logDeterminant += narrowPanel(matrix, size, from, to);
    }
    subtractRowProductsInPlace(matrix, size, blockTo, size, blockTo, size, block, blockTo, true);
  }
  return logDeterminant;
}

/** Factors the small block on the diagonal and solves the rows below it. */
function narrowPanel(matrix: Float64Array, size: number, from: number, to: number): number {
  let logDeterminant = 0;
  for (let i = from; i < to; i++) {
    const row = i * size;
    for (let j = from; j < i; j++) {
      const other = j * size;
      let sum = matrix[row + j]!;
      for (let k = from; k < j; k++) sum -= matrix[row + k]! * matrix[other + k]!;
      matrix[row + j] = sum / matrix[other + j]!;
    }
    let pivot = matrix[row + i]!;
    for (let k = from; k < i; k++) pivot -= matrix[row + k]! ** 2;
    if (!(pivot > 0)) throw new RangeError(`matrix is not positive definite: pivot ${pivot} in row ${i} of ${size}`);
    logDeterminant += Math.log(pivot);
    matrix[row + i] = Math.sqrt(pivot);
  }
  for (let i = to; i < size; i += 4) solveFourRowsInPlace(matrix, size, i, from, to);
  return logDeterminant;
}

/** Solves L Lᵀ x = x in place, L from `choleskyInPlace`; `x` may be shorter than the padded size. */
export function solveCholeskyInPlace(factor: Float64Array, size: number, x: Float64Array): void {
  solveLowerInPlace(factor, size, x);
  solveUpperInPlace(factor, size, x);
}

/** Solves L x = x in place. Four sums a row, since each waits for its own last addition. */
function solveLowerInPlace(factor: Float64Array, size: number, x: Float64Array): void {
  for (let i = 0; i < x.length; i++) {
    const row = i * size;
    let s0 = x[i]!;
    let s1 = 0;
    let s2 = 0;
    let s3 = 0;
    let k = 0;
    for (; k + 3 < i; k += 4) {
      s0 -= factor[row + k]! * x[k]!;
      s1 -= factor[row + k + 1]! * x[k + 1]!;
      s2 -= factor[row + k + 2]! * x[k + 2]!;
      s3 -= factor[row + k + 3]! * x[k + 3]!;
    }
    for (; k < i; k++) s0 -= factor[row + k]! * x[k]!;
    x[i] = (s0 + s1 + (s2 + s3)) / factor[row + i]!;
  }
}

/** Solves Lᵀ x = x in place, reading L along its rows, two at a time. */
export function solveUpperInPlace(factor: Float64Array, size: number, x: Float64Array): void {
  let i = x.length - 1;
  for (; i > 0; i -= 2) {
    const row = i * size;
    const before = row - size;
    const value = x[i]! / factor[row + i]!;
    x[i] = value;
    const next = (x[i - 1]! - factor[row + i - 1]! * value) / factor[before + i - 1]!;
    x[i - 1] = next;
    for (let k = 0; k < i - 1; k++) x[k] = x[k]! - (factor[row + k]! * value + factor[before + k]! * next);
  }
  if (i === 0) x[0] = x[0]! / factor[0]!;
}
