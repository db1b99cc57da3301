import { inverseFromCholesky } from './inverse.ts';
import type { LatentSystem } from './latent-system.ts';

/** What the gradient needs of H⁻¹: traces of its blocks, and the posterior variance of η in censored rows. */
export interface EffectVariances {
  /** Trace over each term's standardised effects. */
  readonly trace: Float64Array;
  /** Trace over the fixed effects. */
  fixedTrace: number;
  /** Variance of η a row; filled for censored rows only. */
  readonly leverage: Float64Array;
}

/**
 * Exact, from the dense inverse of S (written into `inverse`): the eliminated levels follow from
 * (H⁻¹)ee = 1/D + D⁻¹ F S⁻¹ Fᵀ D⁻¹.
 */
export function exactVariancesInPlace(into: EffectVariances, system: LatentSystem, inverse: Float64Array): void {
  const { prepared, factor, scale } = system;
  const { size, levels, blocks, columns, fixedOffset, censored } = prepared;
  inverseFromCholesky(inverse, factor, size);
  into.trace.fill(0);
  blocks.forEach(({ offset, count }, term) => {
    for (let c = offset; offset >= 0 && c < offset + count; c++) into.trace[term]! += inverse[c * size + c]!;
  });
  into.fixedTrace = 0;
  for (let c = fixedOffset; fixedOffset >= 0 && c < columns; c++) into.fixedTrace += inverse[c * size + c]!;
  for (const row of censored) into.leverage[row] = columnsLeverage(system, inverse, scale, row);
  const product = new Float64Array(prepared.crossColumn.length === 0 ? 0 : longestList(prepared.crossStart));
  for (let level = 0; level < levels; level++) {
    into.trace[prepared.eliminated]! += levelVariance(into, system, inverse, level, product);
  }
}

function longestList(start: Int32Array): number {
  let longest = 0;
  for (let i = 1; i < start.length; i++) longest = Math.max(longest, start[i]! - start[i - 1]!);
  return longest;
}

/** aᵀ S⁻¹ a over the columns of one row. */
function columnsLeverage({ prepared }: LatentSystem, inverse: Float64Array, scale: Float64Array, row: number): number {
  const { rowStart, column, weight } = prepared.entries;
  const { size } = prepared;
  let sum = 0;
  for (let k = rowStart[row]!; k < rowStart[row + 1]!; k++) {
    const own = weight[k]! * scale[column[k]!]!;
    const at = column[k]! * size;
    sum += own * own * inverse[at + column[k]!]!;
    for (let j = rowStart[row]!; j < k; j++)
      sum += 2 * own * weight[j]! * scale[column[j]!]! * inverse[at + column[j]!]!;
  }
  return sum;
}

/** Variance of one eliminated level; adds to its censored rows what the level has to do with their η. */
function levelVariance(
  into: EffectVariances,
  system: LatentSystem,
  inverse: Float64Array,
  level: number,
  product: Float64Array,
): number {
  const { prepared, cross, diagonal, scale, eliminatedSd } = system;
  const { crossStart, crossColumn, size, groupStart, groupRows, levelWeight, entries, entryPlace, observations } =
    prepared;
  const first = crossStart[level]!;
  const count = crossStart[level + 1]! - first;
  const d = diagonal[level]!;
  let quadratic = 0;
  for (let k = 0; k < count; k++) {
    const at = crossColumn[first + k]! * size;
    let sum = 0;
    for (let j = 0; j < count; j++) sum += inverse[at + crossColumn[first + j]!]! * cross[first + j]!;
    product[k] = sum;
    quadratic += sum * cross[first + k]!;
  }
  const variance = 1 / d + quadratic / (d * d);
  for (let r = groupStart[level]!; r < groupStart[level + 1]!; r++) {
    const row = groupRows[r]!;
    if (observations.lower[row] === observations.upper[row]) continue;
    const own = eliminatedSd * levelWeight[row]!;
    let together = 0;
    for (let k = entries.rowStart[row]!; k < entries.rowStart[row + 1]!; k++) {
      together += entries.weight[k]! * scale[entries.column[k]!]! * product[entryPlace[k]! - first]!;
    }
    into.leverage[row] = into.leverage[row]! - (2 * own * together) / d + own * own * variance;
  }
  return variance;
}
