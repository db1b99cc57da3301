import type { TermBlock } from './effect-columns.ts';
import type { LatentModel, SparseRows } from './latent-model.ts';

/** All columns' entries row by row. Terms follow each other in the order of their columns, so only entries of one term are sorted. */
export function mergedEntries(
  { observations, terms }: LatentModel,
  blocks: readonly TermBlock[],
  fixed: readonly Float64Array[],
  fixedEffectFrom: number,
): SparseRows {
  const rows = observations.lower.length;
  const kept = terms.filter((_, index) => blocks[index]!.effectFrom >= 0).map((term) => term.rows);
  const from = blocks.map(({ effectFrom }) => effectFrom).filter((effectFrom) => effectFrom >= 0);
  const most = kept.reduce((sum, { column }) => sum + column.length, rows * fixed.length);
  const rowStart = new Int32Array(rows + 1);
  const column = new Int32Array(most);
  const weight = new Float64Array(most);
  let next = 0;
  for (let i = 0; i < rows; i++) {
    for (let t = 0; t < kept.length; t++) {
      const term = kept[t]!;
      const first = next;
      for (let k = term.rowStart[i]!; k < term.rowStart[i + 1]!; k++) {
        const own = from[t]! + term.column[k]!;
        let at = next;
        while (at > first && column[at - 1]! > own) at--;
        if (at > first && column[at - 1] === own) {
          // Named twice in one row: the weights add up.
          weight[at - 1] = weight[at - 1]! + term.weight[k]!;
          continue;
        }
        for (let later = next; later > at; later--) {
          column[later] = column[later - 1]!;
          weight[later] = weight[later - 1]!;
        }
        column[at] = own;
        weight[at] = term.weight[k]!;
        next++;
      }
    }
    fixed.forEach((values, k) => {
      column[next] = fixedEffectFrom + k;
      weight[next++] = values[i]!;
    });
    rowStart[i + 1] = next;
  }
  return { rowStart, column: column.slice(0, next), weight: weight.slice(0, next) };
}
