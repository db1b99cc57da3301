import type { LatentSystem } from './latent-system.ts';
import { effectsOfInPlace, slopeOfInPlace } from './standardise.ts';

/** Effects u of standardised effects x, eliminated levels first. */
export function allEffectsInPlace(u: Float64Array, system: LatentSystem, x: Float64Array): void {
  const { prepared, eliminatedSd, scaleOf } = system;
  const { levels, stretches } = prepared;
  for (let level = 0; level < levels; level++) u[level] = eliminatedSd * x[level]!;
  effectsOfInPlace(u.subarray(levels), x.subarray(levels), stretches, scaleOf);
}

/** η = offset + Z u, into `predictor`. */
export function predictorInPlace(
  predictor: Float64Array,
  { prepared }: LatentSystem,
  u: Float64Array,
  offset: Float64Array | null,
): void {
  const { rows, levels, level, levelWeight, entries } = prepared;
  const { rowStart, column, weight } = entries;
  for (let i = 0; i < rows; i++) {
    let sum = offset === null ? 0 : offset[i]!;
    if (level[i]! >= 0) sum += levelWeight[i]! * u[level[i]!]!;
    for (let k = rowStart[i]!; k < rowStart[i + 1]!; k++) sum += weight[k]! * u[levels + column[k]!]!;
    predictor[i] = sum;
  }
}

/** η = Z u in some rows only, into their places of `predictor`; the other places stay as they are. */
export function predictorOfRowsInPlace(
  predictor: Float64Array,
  { prepared }: LatentSystem,
  u: Float64Array,
  wanted: Int32Array,
): void {
  const { levels, level, levelWeight, entries } = prepared;
  const { rowStart, column, weight } = entries;
  for (const i of wanted) {
    let sum = 0;
    if (level[i]! >= 0) sum += levelWeight[i]! * u[level[i]!]!;
    for (let k = rowStart[i]!; k < rowStart[i + 1]!; k++) sum += weight[k]! * u[levels + column[k]!]!;
    predictor[i] = sum;
  }
}

/** The part of η that comes from one term, into `part`. */
export function termPartInPlace(part: Float64Array, { prepared }: LatentSystem, u: Float64Array, term: number): void {
  const { rows, levels, level, levelWeight, entries, blocks } = prepared;
  const { rowStart, column, weight } = entries;
  const { effectFrom, effects } = blocks[term]!;
  for (let i = 0; i < rows; i++) {
    let sum = 0;
    if (effectFrom < 0) {
      if (level[i]! >= 0) sum = levelWeight[i]! * u[level[i]!]!;
    } else {
      for (let k = rowStart[i]!; k < rowStart[i + 1]!; k++) {
        const c = column[k]!;
        if (c >= effectFrom && c < effectFrom + effects) sum += weight[k]! * u[levels + c]!;
      }
    }
    part[i] = sum;
  }
}

/** Tᵀ Zᵀ r: what a value a row does to every standardised effect. */
export function transposedProductInPlace(product: Float64Array, system: LatentSystem, r: Float64Array): void {
  const { prepared, eliminatedSd, scratch, scaleOf } = system;
  const { rows, levels, level, levelWeight, entries, stretches } = prepared;
  const { rowStart, column, weight } = entries;
  product.fill(0, 0, levels);
  scratch.fill(0);
  for (let i = 0; i < rows; i++) {
    const value = r[i]!;
    if (value === 0) continue;
    if (level[i]! >= 0) product[level[i]!] = product[level[i]!]! + levelWeight[i]! * value;
    for (let k = rowStart[i]!; k < rowStart[i + 1]!; k++)
      scratch[column[k]!] = scratch[column[k]!]! + weight[k]! * value;
  }
  for (let l = 0; l < levels; l++) product[l] = product[l]! * eliminatedSd;
  slopeOfInPlace(product.subarray(levels), scratch, stretches, scaleOf);
}
