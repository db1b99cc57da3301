import { choleskyInPlace, solveCholeskyInPlace, solveLowerInPlace, solveUpperInPlace } from './cholesky.ts';
import type { PreparedModel } from './prepared-model.ts';

/**
 * The system H = Aᵀ W A + P of a prepared model at given sds and row weights W: A has the standardised columns (each times its
 * sd), P is 1 for every random effect and `fixedPrecision` for every fixed one. Block elimination: with D the diagonal of the
 * eliminated levels and F their cross products with the columns, S = H of the columns − Fᵀ D⁻¹ F is factored densely
 * (Golub and Van Loan, Matrix Computations, 4th ed. 2013, 4.2 and 4.5).
 */
export interface LatentSystem {
  readonly prepared: PreparedModel;
  readonly fixedPrecision: number;
  /** sd of each column's term; 1 for a fixed effect. */
  readonly scale: Float64Array;
  eliminatedSd: number;
  /** D. */
  readonly diagonal: Float64Array;
  /** F, one value for each entry of the pattern `crossColumn`. */
  readonly cross: Float64Array;
  /** Cholesky factor of S, lower triangle, by rows. */
  readonly factor: Float64Array;
  logDeterminant: number;
  factorisations: number;
}

export function emptySystem(prepared: PreparedModel, fixedPrecision: number): LatentSystem {
  return {
    prepared,
    fixedPrecision,
    scale: new Float64Array(prepared.columns).fill(1),
    eliminatedSd: 0,
    diagonal: new Float64Array(prepared.levels),
    cross: new Float64Array(prepared.crossColumn.length),
    factor: new Float64Array(prepared.size * prepared.size),
    logDeterminant: 0,
    factorisations: 0,
  };
}

/** Sets the sds of all terms, in the model's order. The factor is out of date until `factorInPlace`. */
export function setScaleInPlace(system: LatentSystem, sds: ArrayLike<number>): void {
  system.prepared.blocks.forEach(({ offset, count }, index) => {
    if (offset < 0) system.eliminatedSd = sds[index]!;
    else system.scale.fill(sds[index]!, offset, offset + count);
  });
}

/** Assembles and factors H at the row weights. */
export function factorInPlace(system: LatentSystem, weight: Float64Array): void {
  const { prepared, scale, factor, diagonal, cross, eliminatedSd } = system;
  const { size, columns, levels, fixedOffset } = prepared;
  factor.fill(0);
  cross.fill(0);
  let logDeterminant = 0;
  for (let level = 0; level <= levels; level++) {
    const ownWeight = addGroup(system, level, weight);
    if (level === levels) break;
    diagonal[level] = 1 + eliminatedSd * eliminatedSd * ownWeight;
    logDeterminant += Math.log(diagonal[level]!);
    if (eliminatedSd > 0) subtractEliminated(system, level);
  }
  for (let i = 0; i < size; i++) {
    const row = i * size;
    if (i >= columns) {
      factor[row + i] = 1;
      continue;
    }
    const own = scale[i]!;
    for (let j = 0; j <= i; j++) factor[row + j] = factor[row + j]! * own * scale[j]!;
    factor[row + i] = factor[row + i]! + (fixedOffset >= 0 && i >= fixedOffset ? system.fixedPrecision : 1);
  }
  for (let k = 0; k < cross.length; k++) cross[k] = cross[k]! * eliminatedSd * scale[prepared.crossColumn[k]!]!;
  system.logDeterminant = logDeterminant + choleskyInPlace(factor, size);
  system.factorisations++;
}

/** Adds the rows of one level to the columns' products and to the level's cross products; returns the level's own weight. */
function addGroup({ prepared, factor, cross }: LatentSystem, level: number, weight: Float64Array): number {
  const { groupStart, groupRows, levelWeight, entries, entryPlace, size, levels } = prepared;
  const { rowStart, column, weight: entry } = entries;
  let ownWeight = 0;
  for (let r = groupStart[level]!; r < groupStart[level + 1]!; r++) {
    const row = groupRows[r]!;
    const w = weight[row]!;
    const last = rowStart[row + 1]!;
    const first = rowStart[row]!;
    for (let k = first; k < last; k++) {
      const scaled = w * entry[k]!;
      const at = column[k]! * size;
      for (let j = first; j <= k; j++) factor[at + column[j]!] = factor[at + column[j]!]! + scaled * entry[j]!;
    }
    if (level === levels) continue;
    const own = w * levelWeight[row]!;
    ownWeight += own * levelWeight[row]!;
    for (let k = first; k < last; k++) cross[entryPlace[k]!] = cross[entryPlace[k]!]! + own * entry[k]!;
  }
  return ownWeight;
}

function subtractEliminated({ prepared, factor, cross, diagonal, eliminatedSd }: LatentSystem, level: number): void {
  const { crossStart, crossColumn, size } = prepared;
  const share = (eliminatedSd * eliminatedSd) / diagonal[level]!;
  const first = crossStart[level]!;
  for (let k = first; k < crossStart[level + 1]!; k++) {
    const scaled = share * cross[k]!;
    const at = crossColumn[k]! * size;
    for (let j = first; j <= k; j++) factor[at + crossColumn[j]!] = factor[at + crossColumn[j]!]! - scaled * cross[j]!;
  }
}

/** Solves H x = x in place, eliminated levels first. */
export function solveSystemInPlace(system: LatentSystem, x: Float64Array): void {
  const { prepared, factor, diagonal, cross } = system;
  const { levels, size, crossStart, crossColumn } = prepared;
  const columns = x.subarray(levels);
  for (let level = 0; level < levels; level++) {
    const share = x[level]! / diagonal[level]!;
    x[level] = share;
    for (let k = crossStart[level]!; k < crossStart[level + 1]!; k++) {
      columns[crossColumn[k]!] = columns[crossColumn[k]!]! - share * cross[k]!;
    }
  }
  solveCholeskyInPlace(factor, size, columns);
  subtractCross(system, x);
}

/** x becomes half of a solution: H^(−1/2) x, so that independent standard numbers become draws with covariance H⁻¹. */
export function spreadInPlace(system: LatentSystem, x: Float64Array): void {
  const { levels, size } = system.prepared;
  for (let level = 0; level < levels; level++) x[level] = x[level]! / Math.sqrt(system.diagonal[level]!);
  solveUpperInPlace(system.factor, size, x.subarray(levels));
  subtractCross(system, x);
}

/** cᵀ H⁻¹ c. `c` is overwritten. */
export function quadraticFormInPlace(system: LatentSystem, c: Float64Array): number {
  const { levels, size, crossStart, crossColumn } = system.prepared;
  const columns = c.subarray(levels);
  let sum = 0;
  for (let level = 0; level < levels; level++) {
    if (c[level] === 0) continue;
    const share = c[level]! / system.diagonal[level]!;
    sum += share * c[level]!;
    for (let k = crossStart[level]!; k < crossStart[level + 1]!; k++) {
      columns[crossColumn[k]!] = columns[crossColumn[k]!]! - share * system.cross[k]!;
    }
  }
  solveLowerInPlace(system.factor, size, columns);
  for (const value of columns) sum += value * value;
  return sum;
}

function subtractCross({ prepared, diagonal, cross }: LatentSystem, x: Float64Array): void {
  const { levels, crossStart, crossColumn } = prepared;
  for (let level = 0; level < levels; level++) {
    let sum = 0;
    for (let k = crossStart[level]!; k < crossStart[level + 1]!; k++) sum += cross[k]! * x[levels + crossColumn[k]!]!;
    x[level] = x[level]! - sum / diagonal[level]!;
  }
}
