/**
 * The one kernel of the dense algebra: for rows r and columns c of a square matrix stored by rows,
 *
 *   M[r][c] −= Σ over k of M[r][k] × M[c][k],   k from `kFrom` up to, not including, `kTo`
 *
 * Both factors are read along rows, so no packing is needed; sixteen sums are kept at once, which is what makes plain
 * JavaScript reach 4 to 5 GFlop/s. All bounds are multiples of 4 apart from `kFrom` and `kTo`. With `isLower` only tiles
 * that touch the lower triangle are done; a tile on the diagonal spills into the upper triangle, which is scratch.
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
  if (kTo <= kFrom) return;
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
