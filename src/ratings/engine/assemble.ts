import { triangleRow } from './exact-products.ts';
import type { LatentSystem } from './latent-system.ts';
import { type LaidLists, type ScatteredLists, type ScatterKernel, scatterKernel } from './scatter-kernel.ts';

let kernel: ScatterKernel | null | undefined;

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
  const { row, subtract } = laidLevels(system);
  for (let effect = 0; effect < effects; effect++) {
    const from = triangleRow(effect);
    const at = effect * effects;
    for (let c = 0; c <= effect; c++) row[c] = exactWeight * prepared.exactProducts[from + c]!;
    addRowsOf(row, system, effect, weight);
    if (eliminatedSd > 0) subtract(effect);
    for (let c = 0; c <= effect; c++) overEffects[at + c] = row[c]!;
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
function addRowsOf(target: Float64Array, { prepared }: LatentSystem, effect: number, weight: Float64Array): void {
  const { entries, censoredEntriesOf } = prepared;
  const { rowStart, column, weight: entry } = entries;
  for (let e = censoredEntriesOf.start[effect]!; e < censoredEntriesOf.start[effect + 1]!; e++) {
    const row = censoredEntriesOf.owner[e]!;
    const last = censoredEntriesOf.place[e]!;
    const scaled = weight[row]! * entry[last]!;
    for (let k = rowStart[row]!; k <= last; k++) {
      target[column[k]!] = target[column[k]!]! + scaled * entry[k]!;
    }
  }
}

/** The eliminated levels' lists, each with what it takes of every product of its own: laid out for the kernel where there is one. */
function laidLevels({ prepared, cross, diagonal, eliminatedSd }: LatentSystem): LaidLists {
  if (kernel === undefined) kernel = scatterKernel();
  const square = eliminatedSd * eliminatedSd;
  const lists: ScatteredLists = {
    listStart: prepared.crossStart,
    column: prepared.crossColumn,
    value: cross,
    perList: diagonal.map((own) => square / own),
    placesOf: prepared.crossesOf,
  };
  return kernel === null ? plainLists(lists, prepared.effects) : kernel.layOut(lists, prepared.effects);
}

/** What the kernel does, in plain code. */
export function plainLists(
  { listStart, column, value, perList, placesOf }: ScatteredLists,
  columns: number,
): LaidLists {
  const row = new Float64Array(columns);
  return {
    row,
    subtract: (of) => {
      for (let e = placesOf.start[of]!; e < placesOf.start[of + 1]!; e++) {
        const list = placesOf.owner[e]!;
        const last = placesOf.place[e]!;
        const scaled = perList[list]! * value[last]!;
        for (let k = listStart[list]!; k <= last; k++) row[column[k]!] = row[column[k]!]! - scaled * value[k]!;
      }
    },
  };
}
