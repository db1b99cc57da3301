/**
 * Solves X Tᵀ = X in place for four rows X of a square matrix and the small lower triangle T that stands in its rows and columns
 * `from` to `to`: forward substitution (Golub and Van Loan, Matrix Computations, 4th ed. 2013, 3.1). Four sums at once, since each
 * waits for its own last addition.
 */
export function solveFourRowsInPlace(m: Float64Array, size: number, row: number, from: number, to: number): void {
  const r0 = row * size;
  const r1 = r0 + size;
  const r2 = r1 + size;
  const r3 = r2 + size;
  for (let j = from; j < to; j++) {
    const other = j * size;
    let s0 = m[r0 + j]!;
    let s1 = m[r1 + j]!;
    let s2 = m[r2 + j]!;
    let s3 = m[r3 + j]!;
    for (let k = from; k < j; k++) {
      const b = m[other + k]!;
      s0 -= m[r0 + k]! * b;
      s1 -= m[r1 + k]! * b;
      s2 -= m[r2 + k]! * b;
      s3 -= m[r3 + k]! * b;
    }
    const perPivot = 1 / m[other + j]!;
    m[r0 + j] = s0 * perPivot;
    m[r1 + j] = s1 * perPivot;
    m[r2 + j] = s2 * perPivot;
    m[r3 + j] = s3 * perPivot;
  }
}
