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
  const { prepared, inverseDiagonal } = system;
  const { levels, blocks, columns, fixedFrom } = prepared;
  covarianceInPlace(system);
  into.trace.fill(0);
  blocks.forEach(({ from, count }, term) => {
    for (let c = from; from >= 0 && c < from + count; c++) into.trace[term]! += inverseDiagonal[c]!;
  });
  into.fixedTrace = 0;
  for (let c = fixedFrom; fixedFrom >= 0 && c < columns; c++) into.fixedTrace += inverseDiagonal[c]!;
  for (const row of prepared.censored) into.leverage[row] = columnsLeverage(system, row);
  const product = crossCovariances(system);
  for (let level = 0; level < levels; level++) {
    into.trace[prepared.eliminated]! += levelVariance(into, system, level, product);
  }
}

/** V c of every level, for the effects it meets. One row of V after another, so that it stays in the nearest cache. */
function crossCovariances({ prepared, overEffects, cross }: LatentSystem): Float64Array {
  const { crossesOf, crossStart, crossColumn, effects } = prepared;
  const product = new Float64Array(cross.length);
  for (let effect = 0; effect < effects; effect++) {
    const at = effect * effects;
    for (let e = crossesOf.start[effect]!; e < crossesOf.start[effect + 1]!; e++) {
      const level = crossesOf.owner[e]!;
      let sum = 0;
      for (let k = crossStart[level]!; k < crossStart[level + 1]!; k++) {
        sum += overEffects[at + crossColumn[k]!]! * cross[k]!;
      }
      product[crossesOf.place[e]!] = sum;
    }
  }
  return product;
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
  const { prepared, cross, diagonal, eliminatedSd } = system;
  const { crossStart, groupStart, groupRows, levelWeight, entries, entryPlace, observations } = prepared;
  const d = diagonal[level]!;
  const square = eliminatedSd * eliminatedSd;
  let quadratic = 0;
  for (let k = crossStart[level]!; k < crossStart[level + 1]!; k++) quadratic += product[k]! * cross[k]!;
  const variance = 1 / d + (square * quadratic) / (d * d);
  for (let r = groupStart[level]!; r < groupStart[level + 1]!; r++) {
    const row = groupRows[r]!;
    if (observations.lower[row] === observations.upper[row]) continue;
    const own = levelWeight[row]!;
    let together = 0;
    for (let k = entries.rowStart[row]!; k < entries.rowStart[row + 1]!; k++) {
      together += entries.weight[k]! * product[entryPlace[k]!]!;
    }
    into.leverage[row] = into.leverage[row]! + square * (own * own * variance - (2 * own * together) / d);
  }
  return variance;
}
