import type { SparseRows } from './latent-model.ts';

/** Where row `effect` of a lower triangle begins that is kept without the places above its diagonal. */
export function triangleRow(effect: number): number {
  return (effect * (effect + 1)) / 2;
}

/**
 * Zᵀ Z of the rows that are known exactly, lower triangle by rows. They all weigh the same at any residual sd, so that their part of
 * a system is this times one number: made once a model, where going through all rows took as long as factoring.
 *
 * @param isExact whether a row is known exactly
 */
export function exactProducts(
  { rowStart, column, weight }: SparseRows,
  effects: number,
  isExact: (row: number) => boolean,
): Float64Array {
  const products = new Float64Array(triangleRow(effects));
  for (let row = 0; row + 1 < rowStart.length; row++) {
    if (!isExact(row)) continue;
    for (let last = rowStart[row]!; last < rowStart[row + 1]!; last++) {
      const at = triangleRow(column[last]!);
      const own = weight[last]!;
      for (let k = rowStart[row]!; k <= last; k++)
        products[at + column[k]!] = products[at + column[k]!]! + own * weight[k]!;
    }
  }
  return products;
}
