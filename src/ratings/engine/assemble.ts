import { triangleRow } from './exact-products.ts';
import type { LatentSystem } from './latent-system.ts';

/**
 * Puts Zᵀ W Z, less what the eliminated levels take of it, into the lower triangle of `overEffects`, with the levels' own `diagonal`
 * and `cross` products. One row of the triangle is made after another, so that it stays in the nearest cache: a level or a session
 * meets columns all over the matrix.
 *
 * @param weight of each row; one and the same for all that are known exactly
 * @returns log determinant of the eliminated levels' diagonal
 */
export function assembleInPlace(system: LatentSystem, weight: Float64Array): number {
  const { prepared, overEffects, diagonal, eliminatedSd } = system;
  const { levels, effects } = prepared;
  crossProductsInPlace(system, weight);
  let logDeterminant = 0;
  for (let level = 0; level < levels; level++) logDeterminant += Math.log(diagonal[level]!);
  const exactWeight = prepared.firstExact < 0 ? 0 : weight[prepared.firstExact]!;
  for (let effect = 0; effect < effects; effect++) {
    const from = triangleRow(effect);
    const at = effect * effects;
    for (let c = 0; c <= effect; c++) overEffects[at + c] = exactWeight * prepared.exactProducts[from + c]!;
    addRowsOf(system, effect, weight);
    if (eliminatedSd > 0) subtractLevelsOf(system, effect);
  }
  return logDeterminant;
}

function crossProductsInPlace({ prepared, diagonal, cross, eliminatedSd }: LatentSystem, weight: Float64Array): void {
  const { rows, level, levelWeight, entries, entryPlace } = prepared;
  const { rowStart, weight: entry } = entries;
  cross.fill(0);
  diagonal.fill(1);
  for (let row = 0; row < rows; row++) {
    if (level[row]! < 0) continue;
    const own = weight[row]! * levelWeight[row]!;
    diagonal[level[row]!] = diagonal[level[row]!]! + eliminatedSd * eliminatedSd * own * levelWeight[row]!;
    for (let k = rowStart[row]!; k < rowStart[row + 1]!; k++) {
      cross[entryPlace[k]!] = cross[entryPlace[k]!]! + own * entry[k]!;
    }
  }
}

/** What the censored sessions with one effect add to its row of the triangle. */
function addRowsOf({ prepared, overEffects }: LatentSystem, effect: number, weight: Float64Array): void {
  const { entries, censoredEntriesOf, effects } = prepared;
  const { rowStart, column, weight: entry } = entries;
  const at = effect * effects;
  for (let e = censoredEntriesOf.start[effect]!; e < censoredEntriesOf.start[effect + 1]!; e++) {
    const row = censoredEntriesOf.owner[e]!;
    const last = censoredEntriesOf.place[e]!;
    const scaled = weight[row]! * entry[last]!;
    for (let k = rowStart[row]!; k <= last; k++) {
      overEffects[at + column[k]!] = overEffects[at + column[k]!]! + scaled * entry[k]!;
    }
  }
}

/** What the eliminated levels that meet one effect take from its row of the triangle. */
function subtractLevelsOf(
  { prepared, overEffects, cross, diagonal, eliminatedSd }: LatentSystem,
  effect: number,
): void {
  const { crossesOf, crossStart, crossColumn, effects } = prepared;
  const at = effect * effects;
  const square = eliminatedSd * eliminatedSd;
  for (let e = crossesOf.start[effect]!; e < crossesOf.start[effect + 1]!; e++) {
    const level = crossesOf.owner[e]!;
    const last = crossesOf.place[e]!;
    const scaled = (square / diagonal[level]!) * cross[last]!;
    for (let k = crossStart[level]!; k <= last; k++) {
      overEffects[at + crossColumn[k]!] = overEffects[at + crossColumn[k]!]! - scaled * cross[k]!;
    }
  }
}
