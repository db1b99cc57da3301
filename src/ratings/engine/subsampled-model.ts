import type { LatentModel, RandomTerm, SparseRows } from './latent-model.ts';

/**
 * A model with every `share`-th level of one term, and the rows of those levels alone: enough to find nearly the variances of a
 * model too large to begin with. Other terms keep their columns.
 */
export function subsampledModel(model: LatentModel, termIndex: number, share: number): LatentModel {
  const term = model.terms[termIndex]!;
  const kept: number[] = [];
  for (let i = 0; i + 1 < term.rows.rowStart.length; i++) {
    const first = term.rows.rowStart[i]!;
    if (term.rows.rowStart[i + 1]! > first && term.rows.column[first]! % share === 0) kept.push(i);
  }
  const pick = (values: Float64Array) => Float64Array.from(kept, (row) => values[row]!);
  const { lower, upper, blur } = model.observations;
  return {
    observations: { lower: pick(lower), upper: pick(upper), ...(blur === undefined ? {} : { blur: pick(blur) }) },
    fixed: model.fixed.map(({ name, values }) => ({ name, values: pick(values) })),
    terms: model.terms.map((other, index): RandomTerm => {
      const rows = pickRows(other.rows, kept);
      if (index !== termIndex) return { ...other, rows };
      const column = rows.column.map((level) => level / share);
      return { ...other, columns: Math.ceil(other.columns / share), rows: { ...rows, column } };
    }),
  };
}

function pickRows({ rowStart, column, weight }: SparseRows, kept: readonly number[]): SparseRows {
  const starts = new Int32Array(kept.length + 1);
  kept.forEach((row, i) => {
    starts[i + 1] = starts[i]! + rowStart[row + 1]! - rowStart[row]!;
  });
  const columns = new Int32Array(starts[kept.length]!);
  const weights = new Float64Array(columns.length);
  kept.forEach((row, i) => {
    for (let k = rowStart[row]!, at = starts[i]!; k < rowStart[row + 1]!; k++, at++) {
      columns[at] = column[k]!;
      weights[at] = weight[k]!;
    }
  });
  return { rowStart: starts, column: columns, weight: weights };
}
