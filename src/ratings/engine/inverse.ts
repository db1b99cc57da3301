import { solveFourRowsInPlace } from './four-rows.ts';
import { subtractRowProductsInPlace } from './row-products.ts';

const BLOCK = 32;

/**
 * Inverse of S from its Cholesky factor, S⁻¹ = L⁻ᵀ L⁻¹, written whole (both triangles) into `inverse`. `size` is a multiple
 * of 4. L⁻ᵀ is kept in the upper triangle while it is needed, so that every product runs along rows. About 2/3 size³
 * operations (Golub and Van Loan, Matrix Computations, 4th ed. 2013, 3.1 and 4.2).
 */
export function inverseFromCholesky(inverse: Float64Array, factor: Float64Array, size: number): void {
  for (let i = 0; i < size; i++) {
    const row = i * size;
    for (let k = 0; k <= i; k++) inverse[row + k] = factor[row + k]!;
    inverse.fill(0, row + i + 1, row + size);
  }
  for (let block = 0; block < size; block += BLOCK) {
    const blockTo = Math.min(size, block + BLOCK);
    columnsAbove(inverse, size, block, blockTo);
    cornerOf(inverse, size, block, blockTo);
  }
  for (let i = 0; i < size; i++) inverse.fill(0, i * size, i * size + i);
  multiplyByTranspose(inverse, size);
}

/** Columns `from` to `to` of L⁻ᵀ in the rows above `from`: rows j of −(L⁻ᵀ Lᵀ) first, then the small triangle of L solved. */
function columnsAbove(m: Float64Array, size: number, from: number, to: number): void {
  for (let block = 0; block < from; block += BLOCK) {
    const blockTo = Math.min(from, block + BLOCK);
    subtractRowProductsInPlace(m, size, block, blockTo, from, to, blockTo, from, false);
    for (let tile = block; tile < blockTo; tile += 4) {
      subtractRowProductsInPlace(m, size, tile, tile + 4, from, to, tile + 4, blockTo, false);
    }
  }
  for (let j = 0; j < from; j += 4) {
    addTileInPlace(m, size, j, from, to);
    solveFourRowsInPlace(m, size, j, from, to);
  }
}

/** A row of L⁻ᵀ begins on its diagonal, inside a tile of the kernel: its first entries are added here. */
function addTileInPlace(m: Float64Array, size: number, tile: number, from: number, to: number): void {
  for (let j = tile; j < tile + 4; j++) {
    const row = j * size;
    for (let i = from; i < to; i++) {
      const other = i * size;
      let sum = m[row + i]!;
      for (let k = j; k < tile + 4; k++) sum -= m[row + k]! * m[other + k]!;
      m[row + i] = sum;
    }
  }
}

/** The block on the diagonal: its own small inverse, transposed. */
function cornerOf(m: Float64Array, size: number, from: number, to: number): void {
  for (let j = from; j < to; j++) {
    const row = j * size;
    for (let i = j + 1; i < to; i++) {
      const other = i * size;
      let sum = -m[other + j]! / m[row + j]!;
      for (let k = j + 1; k < i; k++) sum -= m[row + k]! * m[other + k]!;
      m[row + i] = sum / m[other + i]!;
    }
  }
  for (let i = from; i < to; i++) m[i * size + i] = 1 / m[i * size + i]!;
}

/** From U = L⁻ᵀ in the upper triangle to U Uᵀ in both. The kernel subtracts, so the lower triangle first holds the negative. */
function multiplyByTranspose(m: Float64Array, size: number): void {
  const diagonal = new Float64Array(size);
  for (let i = 0; i < size; i++) {
    let sum = 0;
    for (let k = i; k < size; k++) sum += m[i * size + k]! ** 2;
    diagonal[i] = sum;
  }
  for (let block = 0; block < size; block += BLOCK) {
    const blockTo = Math.min(size, block + BLOCK);
    subtractRowProductsInPlace(m, size, block, blockTo, 0, block, blockTo, size, false);
    for (let tile = block; tile < blockTo; tile += 4) {
      subtractRowProductsInPlace(m, size, tile, tile + 4, 0, block, tile + 4, blockTo, false);
      subtractRowProductsInPlace(m, size, tile, tile + 4, block, tile, tile + 4, size, false);
    }
  }
  for (let i = 0; i < size; i++) {
    const tile = i & ~3;
    for (let j = 0; j < i; j++) {
      let sum = -m[i * size + j]!;
      const kTo = j < tile ? tile + 4 : size;
      for (let k = i; k < kTo; k++) sum += m[i * size + k]! * m[j * size + k]!;
      m[i * size + j] = sum;
    }
  }
  for (let i = 0; i < size; i++) {
    m[i * size + i] = diagonal[i]!;
    for (let j = 0; j < i; j++) m[j * size + i] = m[i * size + j]!;
  }
}
