import { DEPTH, type ProductKernel, productKernel, STRIP } from './product-kernel.ts';

/** Fewer rows than this do not pay for laying out their columns for the kernel. */
const MIN_ROWS = 12;

let kernel: ProductKernel | null | undefined;

/**
 * The one kernel of the dense algebra: for rows r and columns c of a square matrix stored by rows,
 *
 *   M[r][c] −= Σ over k of M[r][k] × M[c][k],   k from `kFrom` up to, not including, `kTo`
 *
 * All bounds are multiples of 4 apart from `kFrom` and `kTo`. With `isLower` only tiles that touch the lower triangle are done; a
 * tile on the diagonal spills into the upper triangle, which is scratch. Done with vectors where the machine has them, in plain
 * code elsewhere, with the same numbers to the last bit.
 */
export function subtractRowProductsInPlace(
  matrix: Float64Array,
  size: number,
  rowFrom: number,
  rowTo: number,
  columnFrom: number,
  columnTo: number,
  kFrom: number,
  kTo: number,
  isLower: boolean,
): void {
  if (kernel === undefined) kernel = productKernel();
  if (kernel === null || rowTo - rowFrom < MIN_ROWS) {
    subtractPlainlyInPlace(matrix, size, rowFrom, rowTo, columnFrom, columnTo, kFrom, kTo, isLower);
    return;
  }
  for (let depth = kFrom; depth < kTo; depth += DEPTH) {
    const depthTo = Math.min(kTo, depth + DEPTH);
    for (let strip = columnFrom; strip < columnTo; strip += STRIP) {
      const stripTo = Math.min(columnTo, strip + STRIP);
      const firstRow = isLower ? Math.max(rowFrom, strip) : rowFrom;
      subtractStrip(kernel, matrix, size, firstRow, rowTo, strip, stripTo, depth, depthTo, isLower);
    }
  }
}

/** One strip of columns and one depth for all rows, by the kernel. */
function subtractStrip(
  { memory, columnsAt, rowsAt, sumsAt, run }: ProductKernel,
  matrix: Float64Array,
  size: number,
  rowFrom: number,
  rowTo: number,
  columnFrom: number,
  columnTo: number,
  kFrom: number,
  kTo: number,
  isLower: boolean,
): void {
  // The kernel goes two deep at a time: a row of zeros makes an odd depth even.
  const depth = (kTo - kFrom + 1) & ~1;
  for (let column = columnFrom; column < columnTo; column += 4) {
    layFourInPlace(memory, columnsAt + (column - columnFrom) * depth, matrix, size, column, kFrom, kTo);
  }
  for (let row = rowFrom; row < rowTo; row += 4) {
    const last = isLower ? Math.min(columnTo, row + 4) : columnTo;
    layFourInPlace(memory, rowsAt, matrix, size, row, kFrom, kTo);
    run(depth, last - columnFrom, depth, 0);
    subtractSumsInPlace(matrix, size, row, columnFrom, last, memory, sumsAt);
  }
}

/** Takes the sums of four rows off their places. */
function subtractSumsInPlace(
  matrix: Float64Array,
  size: number,
  row: number,
  columnFrom: number,
  columnTo: number,
  memory: Float64Array,
  sumsAt: number,
): void {
  for (let r = 0; r < 4; r++) {
    const target = (row + r) * size;
    for (let column = columnFrom, at = sumsAt + 4 * r; column < columnTo; column += 4, at += 16) {
      const to = target + column;
      matrix[to] = matrix[to]! - memory[at]!;
      matrix[to + 1] = matrix[to + 1]! - memory[at + 1]!;
      matrix[to + 2] = matrix[to + 2]! - memory[at + 2]!;
      matrix[to + 3] = matrix[to + 3]! - memory[at + 3]!;
    }
  }
}

/** Columns that are laid out at once, as deep as a sum and the longest way to where it begins. */
const NARROW_STRIP = 32;

/**
 * The same for a block of rows, at most 32, whose sums begin beside their own tile of four rows:
 *
 *   M[r][c] −= Σ over k of M[r][k] × M[c][k],   k from the end of the tile of r up to, not including, `kTo`
 *
 * All bounds are multiples of 4. With `isBefore` only columns before the tile are done. To the last bit what as many calls of
 * `subtractRowProductsInPlace` give, a tile each, but the columns are laid out for the kernel once.
 */
export function subtractBesideTilesInPlace(
  matrix: Float64Array,
  size: number,
  rowFrom: number,
  rowTo: number,
  columnFrom: number,
  columnTo: number,
  kTo: number,
  isBefore: boolean,
): void {
  if (kernel === undefined) kernel = productKernel();
  const lastOf = (row: number) => (isBefore ? Math.min(columnTo, row) : columnTo);
  if (kernel === null || rowTo - rowFrom < MIN_ROWS) {
    for (let row = rowFrom; row < rowTo; row += 4) {
      subtractPlainlyInPlace(matrix, size, row, row + 4, columnFrom, lastOf(row), row + 4, kTo, false);
    }
    return;
  }
  const { memory, columnsAt, rowsAt, sumsAt, run } = kernel;
  for (let strip = columnFrom; strip < columnTo; strip += NARROW_STRIP) {
    const stripTo = Math.min(columnTo, strip + NARROW_STRIP);
    // Each tile counts its depths from where it begins.
    for (let depth = rowFrom + 4; depth < kTo; depth += DEPTH) {
      const laid = Math.min(kTo, depth + DEPTH + rowTo - rowFrom - 4) - depth;
      for (let column = strip; column < stripTo; column += 4) {
        layFourInPlace(memory, columnsAt + (column - strip) * laid, matrix, size, column, depth, depth + laid);
      }
      for (let row = rowFrom; row < rowTo; row += 4) {
        const last = Math.min(stripTo, lastOf(row));
        const from = depth + row - rowFrom;
        const to = Math.min(kTo, from + DEPTH);
        if (from >= to || last <= strip) continue;
        layFourInPlace(memory, rowsAt, matrix, size, row, from, to);
        run(to - from, last - strip, laid, from - depth);
        subtractSumsInPlace(matrix, size, row, strip, last, memory, sumsAt);
      }
    }
  }
}

/** Four rows of the matrix beside each other, one depth after another, to an even depth. */
function layFourInPlace(
  memory: Float64Array,
  from: number,
  matrix: Float64Array,
  size: number,
  row: number,
  kFrom: number,
  kTo: number,
): void {
  const r0 = row * size;
  const r1 = r0 + size;
  const r2 = r1 + size;
  const r3 = r2 + size;
  let at = from;
  for (let k = kFrom; k < kTo; k++, at += 4) {
    memory[at] = matrix[r0 + k]!;
    memory[at + 1] = matrix[r1 + k]!;
    memory[at + 2] = matrix[r2 + k]!;
    memory[at + 3] = matrix[r3 + k]!;
  }
  if (((kTo - kFrom) & 1) === 1) memory.fill(0, at, at + 4);
}

/**
 * `subtractRowProductsInPlace` in plain code. Both factors are read along rows, so no packing is needed; sixteen sums are kept at
 * once, which is what makes plain JavaScript reach 4 to 5 GFlop/s.
 */
export function subtractPlainlyInPlace(
  matrix: Float64Array,
  size: number,
  rowFrom: number,
  rowTo: number,
  columnFrom: number,
  columnTo: number,
  kFrom: number,
  kTo: number,
  isLower: boolean,
): void {
  // Strips of 64 columns by 256 deep stay in the second-level cache while all rows pass over them.
  for (let depth = kFrom; depth < kTo; depth += 256) {
    const depthTo = Math.min(kTo, depth + 256);
    for (let strip = columnFrom; strip < columnTo; strip += 64) {
      const stripTo = Math.min(columnTo, strip + 64);
      for (let row = isLower ? Math.max(rowFrom, strip) : rowFrom; row < rowTo; row += 4) {
        const last = isLower ? Math.min(stripTo, row + 4) : stripTo;
        for (let column = strip; column < last; column += 4) subtractTile(matrix, size, row, column, depth, depthTo);
      }
    }
  }
}

function subtractTile(m: Float64Array, size: number, row: number, column: number, kFrom: number, kTo: number): void {
  const r0 = row * size;
  const r1 = r0 + size;
  const r2 = r1 + size;
  const r3 = r2 + size;
  const c0 = column * size;
  const c1 = c0 + size;
  const c2 = c1 + size;
  const c3 = c2 + size;
  let s00 = 0;
  let s01 = 0;
  let s02 = 0;
  let s03 = 0;
  let s10 = 0;
  let s11 = 0;
  let s12 = 0;
  let s13 = 0;
  let s20 = 0;
  let s21 = 0;
  let s22 = 0;
  let s23 = 0;
  let s30 = 0;
  let s31 = 0;
  let s32 = 0;
  let s33 = 0;
  for (let k = kFrom; k < kTo; k++) {
    const b0 = m[c0 + k]!;
    const b1 = m[c1 + k]!;
    const b2 = m[c2 + k]!;
    const b3 = m[c3 + k]!;
    let a = m[r0 + k]!;
    s00 += a * b0;
    s01 += a * b1;
    s02 += a * b2;
    s03 += a * b3;
    a = m[r1 + k]!;
    s10 += a * b0;
    s11 += a * b1;
    s12 += a * b2;
    s13 += a * b3;
    a = m[r2 + k]!;
    s20 += a * b0;
    s21 += a * b1;
    s22 += a * b2;
    s23 += a * b3;
    a = m[r3 + k]!;
    s30 += a * b0;
    s31 += a * b1;
    s32 += a * b2;
    s33 += a * b3;
  }
  m[r0 + column] = m[r0 + column]! - s00;
  m[r0 + column + 1] = m[r0 + column + 1]! - s01;
  m[r0 + column + 2] = m[r0 + column + 2]! - s02;
  m[r0 + column + 3] = m[r0 + column + 3]! - s03;
  m[r1 + column] = m[r1 + column]! - s10;
  m[r1 + column + 1] = m[r1 + column + 1]! - s11;
  m[r1 + column + 2] = m[r1 + column + 2]! - s12;
  m[r1 + column + 3] = m[r1 + column + 3]! - s13;
  m[r2 + column] = m[r2 + column]! - s20;
  m[r2 + column + 1] = m[r2 + column + 1]! - s21;
  m[r2 + column + 2] = m[r2 + column + 2]! - s22;
  m[r2 + column + 3] = m[r2 + column + 3]! - s23;
  m[r3 + column] = m[r3 + column]! - s30;
  m[r3 + column + 1] = m[r3 + column + 1]! - s31;
  m[r3 + column + 2] = m[r3 + column + 2]! - s32;
  m[r3 + column + 3] = m[r3 + column + 3]! - s33;
}
