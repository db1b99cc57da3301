import { covarianceInPlace, type LatentSystem } from './latent-system.ts';

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
 * Exact, from the covariance of the columns' effects V = T S⁻¹ Tᵀ, which is left in the system: with c a level's cross products,
 * its standardised effect has variance 1/d + sd² cᵀ V c / d².
 */
export function exactVariancesInPlace(into: EffectVariances, system: LatentSystem): void {
  const { prepared, inverse } = system;
  const { size, levels, blocks, columns, fixedFrom, crossStart } = prepared;
  covarianceInPlace(system);
  into.trace.fill(0);
  blocks.forEach(({ from, count }, term) => {
    for (let c = from; from >= 0 && c < from + count; c++) into.trace[term]! += inverse[c * size + c]!;
  });
  into.fixedTrace = 0;
  for (let c = fixedFrom; fixedFrom >= 0 && c < columns; c++) into.fixedTrace += inverse[c * size + c]!;
  for (const row of prepared.censored) into.leverage[row] = columnsLeverage(system, row);
  let longest = 0;
  for (let level = 0; level < levels; level++) longest = Math.max(longest, crossStart[level + 1]! - crossStart[level]!);
  const product = new Float64Array(longest);
  for (let level = 0; level < levels; level++) {
    into.trace[prepared.eliminated]! += levelVariance(into, system, level, product);
  }
}

/** zᵀ V z over the columns of one row. */
function columnsLeverage({ prepared, overEffects }: LatentSystem, row: number): number {
  const { rowStart, column, weight } = prepared.entries;
  let sum = 0;
  for (let k = rowStart[row]!; k < rowStart[row + 1]!; k++) {
    const at = column[k]! * prepared.effects;
    let others = 0;
    for (let j = rowStart[row]!; j < k; j++) others += weight[j]! * overEffects[at + column[j]!]!;
    sum += weight[k]! * (weight[k]! * overEffects[at + column[k]!]! + 2 * others);
  }
  return sum;
}

/** Variance of one eliminated level; adds to its censored rows what the level has to do with their η. */
function levelVariance(into: EffectVariances, system: LatentSystem, level: number, product: Float64Array): number {
  const { prepared, overEffects, cross, diagonal, eliminatedSd } = system;
  const { crossStart, crossColumn, effects, groupStart, groupRows, levelWeight, entries, entryPlace, observations } =
    prepared;
  const first = crossStart[level]!;
  const count = crossStart[level + 1]! - first;
  const d = diagonal[level]!;
  const square = eliminatedSd * eliminatedSd;
  let quadratic = 0;
  for (let k = 0; k < count; k++) {
    const at = crossColumn[first + k]! * effects;
    let sum = 0;
    for (let j = 0; j < count; j++) sum += overEffects[at + crossColumn[first + j]!]! * cross[first + j]!;
    product[k] = sum;
    quadratic += sum * cross[first + k]!;
  }
  const variance = 1 / d + (square * quadratic) / (d * d);
  for (let r = groupStart[level]!; r < groupStart[level + 1]!; r++) {
    const row = groupRows[r]!;
    if (observations.lower[row] === observations.upper[row]) continue;
    const own = levelWeight[row]!;
    let together = 0;
    for (let k = entries.rowStart[row]!; k < entries.rowStart[row + 1]!; k++) {
      together += entries.weight[k]! * product[entryPlace[k]! - first]!;
    }
    into.leverage[row] = into.leverage[row]! + square * (own * own * variance - (2 * own * together) / d);
  }
  return variance;
}
