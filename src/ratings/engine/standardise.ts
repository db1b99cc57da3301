import type { Stretch } from './effect-columns.ts';

/** sd of a stretch's term; 1 for fixed effects. */
type ScaleOf = (stretch: Stretch) => number;

/** u = T x: effects from standardised ones, columns only. */
export function effectsOfInPlace(u: Float64Array, x: Float64Array, parts: readonly Stretch[], scaleOf: ScaleOf): void {
  for (const part of parts) {
    const scale = scaleOf(part);
    const { effectFrom, effects, from, count, basis } = part;
    for (let r = 0; r < effects; r++) {
      let sum = 0;
      if (basis === null) sum = x[from + r]!;
      else for (let k = 0; k < count; k++) sum += basis[r * count + k]! * x[from + k]!;
      u[effectFrom + r] = scale * sum;
    }
  }
}

/** x = Tᵀ u: what a slope by effects is by standardised ones. */
export function slopeOfInPlace(x: Float64Array, u: Float64Array, parts: readonly Stretch[], scaleOf: ScaleOf): void {
  for (const part of parts) {
    const scale = scaleOf(part);
    const { effectFrom, effects, from, count, basis } = part;
    for (let k = 0; k < count; k++) {
      let sum = 0;
      if (basis === null) sum = u[effectFrom + k]!;
      else for (let r = 0; r < effects; r++) sum += basis[r * count + k]! * u[effectFrom + r]!;
      x[from + k] = scale * sum;
    }
  }
}

/** A symmetric matrix by rows; the lower triangle counts. */
export interface Lower {
  readonly values: Float64Array;
  readonly width: number;
}

/** Tᵀ G T, from a matrix over effects to one over standardised effects, lower triangles. */
export function standardiseInPlace(into: Lower, from: Lower, parts: readonly Stretch[], scaleOf: ScaleOf): void {
  transform(into, from, parts, scaleOf, true);
}

/** T V Tᵀ, from a covariance over standardised effects to one over effects, lower triangles. */
export function covarianceOfEffectsInPlace(
  into: Lower,
  from: Lower,
  parts: readonly Stretch[],
  scaleOf: ScaleOf,
): void {
  transform(into, from, parts, scaleOf, false);
}

/** One side of a stretch: where it lies in the two matrices, and the small matrix between them (`out` rows, `inner` columns). */
interface Side {
  readonly outFrom: number;
  readonly outCount: number;
  readonly innerFrom: number;
  readonly innerCount: number;
  readonly matrix: Float64Array | null;
  readonly scale: number;
}

function transform(
  into: Lower,
  from: Lower,
  parts: readonly Stretch[],
  scaleOf: ScaleOf,
  isToStandardised: boolean,
): void {
  const transposes = new Map<Float64Array, Float64Array>();
  const sides = parts.map((part): Side => {
    const { effectFrom, effects, from: standardFrom, count, basis } = part;
    const scale = scaleOf(part);
    if (!isToStandardised) {
      return {
        outFrom: effectFrom,
        outCount: effects,
        innerFrom: standardFrom,
        innerCount: count,
        matrix: basis,
        scale,
      };
    }
    let matrix: Float64Array | null = null;
    if (basis !== null) {
      matrix = transposes.get(basis) ?? basis.map((_, k) => basis[(k % effects) * count + Math.floor(k / effects)]!);
      transposes.set(basis, matrix);
    }
    return { outFrom: standardFrom, outCount: count, innerFrom: effectFrom, innerCount: effects, matrix, scale };
  });
  const widest = sides.reduce(
    (most, side) => (side.matrix === null ? most : Math.max(most, side.innerCount, side.outCount)),
    0,
  );
  const corner = new Float64Array(widest * widest);
  sides.forEach((rows, i) => {
    for (let j = 0; j < i; j++) transformRectangle(into, from, rows, sides[j]!, corner);
    transformDiagonal(into, from, rows, corner);
  });
}

/** The rectangle below the diagonal where one stretch's rows meet an earlier stretch's columns. */
function transformRectangle(into: Lower, from: Lower, rows: Side, columns: Side, corner: Float64Array): void {
  const scale = rows.scale * columns.scale;
  for (let r = 0; r < rows.outCount; r++) {
    const at = (rows.outFrom + r) * into.width + columns.outFrom;
    if (columns.matrix === null) {
      combineRows(into.values, at, from, rows, r, columns.innerFrom, columns.innerCount, scale);
      continue;
    }
    combineRows(corner, 0, from, rows, r, columns.innerFrom, columns.innerCount, scale);
    for (let c = 0; c < columns.outCount; c++) {
      let sum = 0;
      const weights = c * columns.innerCount;
      for (let k = 0; k < columns.innerCount; k++) sum += columns.matrix[weights + k]! * corner[k]!;
      into.values[at + c] = sum;
    }
  }
}

/** Row r of M × the rectangle, before anything is done to its columns. */
function combineRows(
  target: Float64Array,
  at: number,
  from: Lower,
  rows: Side,
  r: number,
  columnFrom: number,
  columnCount: number,
  scale: number,
): void {
  if (rows.matrix === null) {
    const source = (rows.innerFrom + r) * from.width + columnFrom;
    for (let c = 0; c < columnCount; c++) target[at + c] = scale * from.values[source + c]!;
    return;
  }
  target.fill(0, at, at + columnCount);
  const { values, width } = from;
  const weights = r * rows.innerCount;
  // Four rows a pass, so that the target is read and written a quarter as often.
  for (let k = 0; k < rows.innerCount; k += 4) {
    const more = Math.min(4, rows.innerCount - k);
    const w0 = scale * rows.matrix[weights + k]!;
    const w1 = more > 1 ? scale * rows.matrix[weights + k + 1]! : 0;
    const w2 = more > 2 ? scale * rows.matrix[weights + k + 2]! : 0;
    const w3 = more > 3 ? scale * rows.matrix[weights + k + 3]! : 0;
    const s0 = (rows.innerFrom + k) * width + columnFrom;
    // A row that is not there weighs nothing; the first stands in for it.
    const s1 = more > 1 ? s0 + width : s0;
    const s2 = more > 2 ? s1 + width : s0;
    const s3 = more > 3 ? s2 + width : s0;
    for (let c = 0; c < columnCount; c++) {
      target[at + c] =
        target[at + c]! + (w0 * values[s0 + c]! + w1 * values[s1 + c]!) + (w2 * values[s2 + c]! + w3 * values[s3 + c]!);
    }
  }
}

/** The triangle where a stretch meets itself. */
function transformDiagonal(into: Lower, from: Lower, side: Side, corner: Float64Array): void {
  const { outFrom, outCount, innerFrom, innerCount, matrix, scale } = side;
  if (matrix === null) {
    for (let r = 0; r < outCount; r++) {
      const source = (innerFrom + r) * from.width + innerFrom;
      const at = (outFrom + r) * into.width + outFrom;
      for (let c = 0; c <= r; c++) into.values[at + c] = scale * scale * from.values[source + c]!;
    }
    return;
  }
  // Rows first, into the corner; only the lower triangle of the source is there.
  for (let r = 0; r < outCount; r++) {
    for (let c = 0; c < innerCount; c++) {
      let sum = 0;
      for (let k = 0; k < innerCount; k++) {
        const row = innerFrom + Math.max(k, c);
        sum += matrix[r * innerCount + k]! * from.values[row * from.width + innerFrom + Math.min(k, c)]!;
      }
      corner[r * innerCount + c] = sum;
    }
  }
  for (let r = 0; r < outCount; r++) {
    for (let c = 0; c <= r; c++) {
      let sum = 0;
      for (let k = 0; k < innerCount; k++) sum += corner[r * innerCount + k]! * matrix[c * innerCount + k]!;
      into.values[(outFrom + r) * into.width + outFrom + c] = scale * scale * sum;
    }
  }
}
