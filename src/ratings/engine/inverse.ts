import { solveFourRowsInPlace } from './four-rows.ts';
import { subtractBesideTilesInPlace, subtractRowProductsInPlace } from './row-products.ts';

const BLOCK = 32;

/**
 * Inverse of S from its Cholesky factor, S⁻¹ = L⁻ᵀ L⁻¹, into the lower triangle of `inverse`; the upper one is scratch. `size` is a
 * multiple of 4. L⁻ᵀ is kept in the upper triangle while it is needed, so that every product runs along rows. About 2/3 size³
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
    subtractBesideTilesInPlace(m, size, block, blockTo, from, to, blockTo, false);
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

/** From U = L⁻ᵀ in the upper triangle to U Uᵀ in the lower one. The kernel subtracts, so the lower triangle first holds the negative. */
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
    subtractBesideTilesInPlace(m, size, block, blockTo, 0, block, blockTo, false);
    subtractBesideTilesInPlace(m, size, block, blockTo, block, blockTo, size, true);
  }
  for (let tile = 0; tile < size; tile += 4) {
    addOwnTileInPlace(m, size, tile);
    for (let i = tile + 1; i < tile + 4; i++) {
      for (let j = tile; j < i; j++) {
        let sum = -m[i * size + j]!;
        for (let k = i; k < size; k++) sum += m[i * size + k]! * m[j * size + k]!;
        m[i * size + j] = sum;
      }
    }
  }
  for (let i = 0; i < size; i++) m[i * size + i] = diagonal[i]!;
}

/** Turns what the kernel left in four rows before their tile, and adds the tile's own products. Four rows read each column once. */
function addOwnTileInPlace(m: Float64Array, size: number, tile: number): void {
  const r0 = tile * size;
  const r1 = r0 + size;
  const r2 = r1 + size;
  const r3 = r2 + size;
  for (let j = 0; j < tile; j++) {
    const at = j * size + tile;
    const b1 = m[at + 1]!;
    const b2 = m[at + 2]!;
    const b3 = m[at + 3]!;
    m[r0 + j] =
      -m[r0 + j]! + m[r0 + tile]! * m[at]! + m[r0 + tile + 1]! * b1 + m[r0 + tile + 2]! * b2 + m[r0 + tile + 3]! * b3;
    m[r1 + j] = -m[r1 + j]! + m[r1 + tile + 1]! * b1 + m[r1 + tile + 2]! * b2 + m[r1 + tile + 3]! * b3;
    m[r2 + j] = -m[r2 + j]! + m[r2 + tile + 2]! * b2 + m[r2 + tile + 3]! * b3;
    m[r3 + j] = -m[r3 + j]! + m[r3 + tile + 3]! * b3;
  }
}
