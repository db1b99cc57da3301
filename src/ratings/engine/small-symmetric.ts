/** The symmetric matrix of a few parameters, by rows. */
interface SmallSymmetric {
  readonly count: number;
  readonly values: Float64Array;
}

/** Of the largest eigenvalue of M at unit diagonal: less counts as nothing known. */
const MIN_EIGENVALUE = 1e-10;

/**
 * Solves M x = b, M scaled to a unit diagonal first, through its eigenvalues. A direction M says nothing about, or less than
 * nothing where it is not positive definite, is taken as very nearly unknown: the solution is long there, never NaN.
 */
export function solveSmall({ count, values }: SmallSymmetric, b: ArrayLike<number>): Float64Array {
  const scale = Float64Array.from({ length: count }, (_, i) => {
    const own = values[i * count + i]!;
    return own > 0 ? 1 / Math.sqrt(own) : 0;
  });
  const scaled = values.map((value, k) => value * scale[Math.floor(k / count)]! * scale[k % count]!);
  const x = new Float64Array(count);
  const { values: eigenvalues, vectors } = eigenSmall({ count, values: scaled });
  const least = MIN_EIGENVALUE * eigenvalues.reduce((most, value) => Math.max(most, value), 0);
  vectors.forEach((vector, k) => {
    if (!(least > 0)) return;
    const share = vector.reduce((sum, v, i) => sum + v * scale[i]! * b[i]!, 0) / Math.max(eigenvalues[k]!, least);
    for (let i = 0; i < count; i++) x[i] = x[i]! + share * vector[i]! * scale[i]!;
  });
  return x;
}

/** Eigenvalues and eigenvectors by Jacobi's rotations (Golub and Van Loan, 4th ed. 2013, 8.5). `vectors[k]` belongs to `values[k]`. */
export function eigenSmall({ count, values }: SmallSymmetric): { values: Float64Array; vectors: Float64Array[] } {
  const m = values.slice();
  const vectors = Array.from({ length: count }, (_, i) => {
    const unit = new Float64Array(count);
    unit[i] = 1;
    return unit;
  });
  for (let sweep = 0; sweep < 60; sweep++) {
    let off = 0;
    let all = 0;
    for (let i = 0; i < count; i++) {
      for (let j = 0; j < count; j++) {
        all += m[i * count + j]! ** 2;
        if (i !== j) off += m[i * count + j]! ** 2;
      }
    }
    if (off <= 1e-30 * all) break;
    for (let p = 0; p < count; p++) for (let q = p + 1; q < count; q++) rotate(m, vectors, count, p, q);
  }
  return { values: Float64Array.from({ length: count }, (_, i) => m[i * count + i]!), vectors };
}

function rotate(m: Float64Array, vectors: Float64Array[], count: number, p: number, q: number): void {
  const apart = m[p * count + q]!;
  if (apart === 0) return;
  const theta = (m[q * count + q]! - m[p * count + p]!) / (2 * apart);
  const t = (theta >= 0 ? 1 : -1) / (Math.abs(theta) + Math.hypot(1, theta));
  const c = 1 / Math.hypot(1, t);
  const s = t * c;
  for (let k = 0; k < count; k++) {
    const a = m[k * count + p]!;
    const b = m[k * count + q]!;
    m[k * count + p] = c * a - s * b;
    m[k * count + q] = s * a + c * b;
  }
  for (let k = 0; k < count; k++) {
    const a = m[p * count + k]!;
    const b = m[q * count + k]!;
    m[p * count + k] = c * a - s * b;
    m[q * count + k] = s * a + c * b;
  }
  const u = vectors[p]!;
  const v = vectors[q]!;
  for (let k = 0; k < count; k++) {
    const a = u[k]!;
    const b = v[k]!;
    u[k] = c * a - s * b;
    v[k] = s * a + c * b;
  }
}
