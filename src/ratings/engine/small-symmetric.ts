import { choleskyInPlace, paddedSize, solveCholeskyInPlace } from './cholesky.ts';

/** The symmetric matrix of a few parameters, by rows. */
export interface SmallSymmetric {
  readonly count: number;
  readonly values: Float64Array;
}

/** Solves M x = b for a positive semidefinite M; a direction M says nothing about gets no step. */
export function solveSmall({ count, values }: SmallSymmetric, b: ArrayLike<number>): Float64Array {
  const size = paddedSize(count);
  const matrix = new Float64Array(size * size);
  // Scaled to a unit diagonal, so that the ridge means the same to every parameter.
  const scale = Float64Array.from({ length: count }, (_, i) => {
    const own = values[i * count + i]!;
    return own > 0 ? 1 / Math.sqrt(own) : 0;
  });
  for (let i = 0; i < size; i++) {
    for (let j = 0; j < i && i < count; j++) matrix[i * size + j] = values[i * count + j]! * scale[i]! * scale[j]!;
    matrix[i * size + i] = 1 + 1e-10;
  }
  const x = Float64Array.from({ length: count }, (_, i) => b[i]! * scale[i]!);
  choleskyInPlace(matrix, size);
  solveCholeskyInPlace(matrix, size, x);
  return x.map((value, i) => value * scale[i]!);
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
