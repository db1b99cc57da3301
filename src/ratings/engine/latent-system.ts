import { assembleInPlace } from './assemble.ts';
import { choleskyInPlace, solveCholeskyInPlace, solveUpperInPlace } from './cholesky.ts';
import type { Stretch } from './effect-columns.ts';
import { inverseFromCholesky } from './inverse.ts';
import type { PreparedModel } from './prepared-model.ts';
import { covarianceOfEffectsInPlace, effectsOfInPlace, slopeOfInPlace, standardiseInPlace } from './standardise.ts';

/**
 * The system H = Tᵀ Zᵀ W Z T + P of a prepared model at given sds and row weights W: P is 1 for every random effect and
 * `fixedPrecision` for every fixed one. Block elimination: with D the diagonal of the eliminated levels and F their cross products
 * with the columns, S = H of the columns − Fᵀ D⁻¹ F is factored densely (Golub and Van Loan, Matrix Computations, 4th ed.
 * 2013, 4.2 and 4.5).
 */
export interface LatentSystem {
  readonly prepared: PreparedModel;
  readonly fixedPrecision: number;
  /** sds of all terms, in the model's order. */
  readonly sds: Float64Array;
  readonly scaleOf: (stretch: Stretch) => number;
  /** sd of the eliminated term, 0 if none. */
  eliminatedSd: number;
  /** D. */
  readonly diagonal: Float64Array;
  /** Zᵀ W Z between eliminated levels and effects, one value for each entry of the pattern `crossColumn`. */
  readonly cross: Float64Array;
  /** Over effects, by rows: products while S is made, their covariance after `covarianceInPlace`. */
  readonly overEffects: Float64Array;
  /** Cholesky factor of S, lower triangle, by rows. */
  readonly factor: Float64Array;
  /** The diagonal of S⁻¹, after `covarianceInPlace`. */
  readonly inverseDiagonal: Float64Array;
  logDeterminant: number;
  factorisations: number;
  readonly scratch: Float64Array;
}

export function emptySystem(prepared: PreparedModel, fixedPrecision: number): LatentSystem {
  const { blocks, levels, crossColumn, effects, size } = prepared;
  const sds = new Float64Array(blocks.length);
  return {
    prepared,
    fixedPrecision,
    sds,
    scaleOf: ({ term }) => (term < 0 ? 1 : sds[term]!),
    eliminatedSd: 0,
    diagonal: new Float64Array(levels),
    cross: new Float64Array(crossColumn.length),
    overEffects: new Float64Array(effects * effects),
    factor: new Float64Array(size * size),
    inverseDiagonal: new Float64Array(size),
    logDeterminant: 0,
    factorisations: 0,
    scratch: new Float64Array(effects),
  };
}

/** Sets the sds of all terms. The factor is out of date until `factorInPlace`. */
export function setScaleInPlace(system: LatentSystem, sds: ArrayLike<number>): void {
  system.sds.set(sds);
  system.eliminatedSd = system.prepared.eliminated < 0 ? 0 : sds[system.prepared.eliminated]!;
}

/** Assembles and factors H at the row weights. */
export function factorInPlace(system: LatentSystem, weight: Float64Array): void {
  const { prepared, overEffects, factor } = system;
  const { size, columns, effects, fixedFrom } = prepared;
  const logDeterminant = assembleInPlace(system, weight);
  standardiseInPlace(
    { values: factor, width: size },
    { values: overEffects, width: effects },
    prepared.stretches,
    system.scaleOf,
  );
  for (let i = 0; i < columns; i++) {
    const precision = fixedFrom >= 0 && i >= fixedFrom ? system.fixedPrecision : 1;
    factor[i * size + i] = factor[i * size + i]! + precision;
  }
  for (let i = columns; i < size; i++) {
    factor.fill(0, i * size, i * size + i);
    factor[i * size + i] = 1;
  }
  system.logDeterminant = logDeterminant + choleskyInPlace(factor, size);
  system.factorisations++;
}

/** Solves H x = x in place, eliminated levels first. */
export function solveSystemInPlace(system: LatentSystem, x: Float64Array): void {
  const { prepared, factor, diagonal, cross, eliminatedSd, scratch } = system;
  const { levels, size, crossStart, crossColumn, stretches } = prepared;
  const columns = x.subarray(levels);
  scratch.fill(0);
  for (let level = 0; level < levels; level++) {
    const share = x[level]! / diagonal[level]!;
    x[level] = share;
    for (let k = crossStart[level]!; k < crossStart[level + 1]!; k++) {
      scratch[crossColumn[k]!] = scratch[crossColumn[k]!]! + share * cross[k]!;
    }
  }
  if (levels > 0) {
    const slope = new Float64Array(columns.length);
    slopeOfInPlace(slope, scratch, stretches, system.scaleOf);
    for (let i = 0; i < columns.length; i++) columns[i] = columns[i]! - eliminatedSd * slope[i]!;
  }
  solveCholeskyInPlace(factor, size, columns);
  subtractCrossInPlace(system, x);
}

/** x becomes H^(−1/2) x: independent standard numbers become draws with covariance H⁻¹. */
export function applyInverseSqrtInPlace(system: LatentSystem, x: Float64Array): void {
  const { levels, size } = system.prepared;
  for (let level = 0; level < levels; level++) x[level] = x[level]! / Math.sqrt(system.diagonal[level]!);
  solveUpperInPlace(system.factor, size, x.subarray(levels));
  subtractCrossInPlace(system, x);
}

/** Takes D⁻¹ F × the columns from the eliminated levels. */
function subtractCrossInPlace(
  { prepared, diagonal, cross, eliminatedSd, scratch, scaleOf }: LatentSystem,
  x: Float64Array,
): void {
  const { levels, crossStart, crossColumn, stretches } = prepared;
  if (levels === 0) return;
  effectsOfInPlace(scratch, x.subarray(levels), stretches, scaleOf);
  for (let level = 0; level < levels; level++) {
    let sum = 0;
    for (let k = crossStart[level]!; k < crossStart[level + 1]!; k++) sum += cross[k]! * scratch[crossColumn[k]!]!;
    x[level] = x[level]! - (eliminatedSd * sum) / diagonal[level]!;
  }
}

/**
 * Puts the posterior covariance of the columns' effects, T S⁻¹ Tᵀ, into `overEffects` (whole, both triangles), and the
 * diagonal of S⁻¹ into `inverseDiagonal`. The factor stays as it is.
 */
export function covarianceInPlace(system: LatentSystem): void {
  const { prepared, factor, inverseDiagonal, overEffects, scaleOf } = system;
  const { size, effects, stretches } = prepared;
  const inverse = inverseRoom(size * size);
  inverseFromCholesky(inverse, factor, size);
  for (let c = 0; c < size; c++) inverseDiagonal[c] = inverse[c * size + c]!;
  covarianceOfEffectsInPlace(
    { values: overEffects, width: effects },
    { values: inverse, width: size },
    stretches,
    scaleOf,
  );
  for (let i = 0; i < effects; i++) {
    for (let j = 0; j < i; j++) overEffects[j * effects + i] = overEffects[i * effects + j]!;
  }
}

let room = new Float64Array(0);

/** Room for S⁻¹, which nobody needs for longer than the call that makes it: one for all fits, since of a large one it takes megabytes. */
function inverseRoom(numbers: number): Float64Array {
  if (room.length < numbers) room = new Float64Array(numbers);
  return room;
}
