import type { LatentSystem } from './latent-system.ts';

/** η = offset + A x, into `predictor`: the standardised effects x make the linear predictor of every row. */
export function predictorInPlace(
  predictor: Float64Array,
  system: LatentSystem,
  x: Float64Array,
  offset: Float64Array | null,
): void {
  const { prepared, scale, eliminatedSd } = system;
  const { rows, levels, level, levelWeight, entries } = prepared;
  const { rowStart, column, weight } = entries;
  for (let i = 0; i < rows; i++) {
    let sum = offset === null ? 0 : offset[i]!;
    if (level[i]! >= 0) sum += eliminatedSd * levelWeight[i]! * x[level[i]!]!;
    for (let k = rowStart[i]!; k < rowStart[i + 1]!; k++) {
      const c = column[k]!;
      sum += weight[k]! * scale[c]! * x[levels + c]!;
    }
    predictor[i] = sum;
  }
}

/** The part of η that comes from one term, into `part`. */
export function termPartInPlace(part: Float64Array, system: LatentSystem, x: Float64Array, term: number): void {
  const { prepared, scale, eliminatedSd } = system;
  const { rows, levels, level, levelWeight, entries, blocks } = prepared;
  const { rowStart, column, weight } = entries;
  const { offset, count } = blocks[term]!;
  for (let i = 0; i < rows; i++) {
    let sum = 0;
    if (offset < 0) {
      if (level[i]! >= 0) sum = eliminatedSd * levelWeight[i]! * x[level[i]!]!;
    } else {
      for (let k = rowStart[i]!; k < rowStart[i + 1]!; k++) {
        const c = column[k]!;
        if (c >= offset && c < offset + count) sum += weight[k]! * scale[c]! * x[levels + c]!;
      }
    }
    part[i] = sum;
  }
}

/** Aᵀ r, into `product`: what a value a row does to every standardised effect. */
export function transposedProductInPlace(product: Float64Array, system: LatentSystem, r: Float64Array): void {
  const { prepared, scale, eliminatedSd } = system;
  const { rows, levels, level, levelWeight, entries, columns } = prepared;
  const { rowStart, column, weight } = entries;
  product.fill(0);
  for (let i = 0; i < rows; i++) {
    const value = r[i]!;
    if (value === 0) continue;
    if (level[i]! >= 0) product[level[i]!] = product[level[i]!]! + levelWeight[i]! * value;
    for (let k = rowStart[i]!; k < rowStart[i + 1]!; k++) {
      product[levels + column[k]!] = product[levels + column[k]!]! + weight[k]! * value;
    }
  }
  for (let l = 0; l < levels; l++) product[l] = product[l]! * eliminatedSd;
  for (let c = 0; c < columns; c++) product[levels + c] = product[levels + c]! * scale[c]!;
}
