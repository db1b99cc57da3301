import type { SparseRows } from './latent-model.ts';

/** Sparse rows of a factor: weight 1 in the row's level, nothing where the level is negative (not known). */
export function factorRows(levels: ArrayLike<number>): SparseRows {
  const rowStart = new Int32Array(levels.length + 1);
  const column = new Int32Array(levels.length);
  let next = 0;
  for (let i = 0; i < levels.length; i++) {
    if (levels[i]! >= 0) column[next++] = levels[i]!;
    rowStart[i + 1] = next;
  }
  return { rowStart, column: column.slice(0, next), weight: new Float64Array(next).fill(1) };
}

/** Sparse rows from a list of entries for each row. */
export function sparseRows(
  entries: readonly (readonly { readonly column: number; readonly weight: number }[])[],
): SparseRows {
  const count = entries.reduce((sum, row) => sum + row.length, 0);
  const rowStart = new Int32Array(entries.length + 1);
  const column = new Int32Array(count);
  const weight = new Float64Array(count);
  let next = 0;
  for (let i = 0; i < entries.length; i++) {
    for (const entry of entries[i]!) {
      column[next] = entry.column;
      weight[next++] = entry.weight;
    }
    rowStart[i + 1] = next;
  }
  return { rowStart, column, weight };
}
