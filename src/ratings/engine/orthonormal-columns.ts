/** X = Q R with the dependent columns of X left out. */
export interface OrthonormalColumns {
  /** Orthonormal columns. */
  readonly q: readonly Float64Array[];
  /** Which columns of X they stand for, ascending; the others say nothing that these do not. */
  readonly kept: readonly number[];
  /** R by rows: `r[i][j]` for kept columns i ≤ j. */
  readonly r: readonly (readonly number[])[];
}

/** A column whose part outside the earlier ones is less than this share of its length counts as dependent. */
const DEPENDENT = 1e-11;

/**
 * Gram–Schmidt with each column cleaned twice, which is enough for full accuracy (Giraud, Langou and Rozložník, Computers and
 * Mathematics with Applications 50, 2005). Regression on Q instead of X survives ill-conditioned columns, and an intercept put
 * first centres the rest.
 */
export function orthonormalColumns(columns: readonly Float64Array[]): OrthonormalColumns {
  const q: Float64Array[] = [];
  const kept: number[] = [];
  const coefficients: number[][] = [];
  columns.forEach((column, index) => {
    const rest = column.slice();
    const before = norm(rest);
    const along = q.map(() => 0);
    for (let pass = 0; pass < 2; pass++) {
      q.forEach((unit, i) => {
        const share = dot(unit, rest);
        along[i] = along[i]! + share;
        for (let k = 0; k < rest.length; k++) rest[k] = rest[k]! - share * unit[k]!;
      });
    }
    const length = norm(rest);
    if (!(length > DEPENDENT * before)) return;
    for (let k = 0; k < rest.length; k++) rest[k] = rest[k]! / length;
    q.push(rest);
    kept.push(index);
    coefficients.push([...along, length]);
  });
  const r = kept.map((_, i) => kept.map((_unused, j) => coefficients[j]![i] ?? 0));
  return { q, kept, r };
}

/** Solves R b = g by back substitution. */
export function solveUpperSmall(r: readonly (readonly number[])[], g: ArrayLike<number>): Float64Array {
  const b = Float64Array.from(g);
  for (let i = b.length - 1; i >= 0; i--) {
    for (let j = i + 1; j < b.length; j++) b[i] = b[i]! - r[i]![j]! * b[j]!;
    b[i] = b[i]! / r[i]![i]!;
  }
  return b;
}

/** Solves Rᵀ w = c by forward substitution: weights on b become weights on g. */
export function solveUpperTransposedSmall(r: readonly (readonly number[])[], c: ArrayLike<number>): Float64Array {
  const w = Float64Array.from(c);
  for (let i = 0; i < w.length; i++) {
    for (let j = 0; j < i; j++) w[i] = w[i]! - r[j]![i]! * w[j]!;
    w[i] = w[i]! / r[i]![i]!;
  }
  return w;
}

function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let k = 0; k < a.length; k++) sum += a[k]! * b[k]!;
  return sum;
}

function norm(a: Float64Array): number {
  // Scaled, so that neither weights in grams squared nor tiny ones leave the range of a double.
  let largest = 0;
  for (let k = 0; k < a.length; k++) largest = Math.max(largest, Math.abs(a[k]!));
  if (largest === 0) return 0;
  let sum = 0;
  for (let k = 0; k < a.length; k++) sum += (a[k]! / largest) ** 2;
  return largest * Math.sqrt(sum);
}
