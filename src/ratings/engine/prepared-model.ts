import { paddedSize } from './cholesky.ts';
import { appendRow, isOneLevelARow, type TermBlock, termBlock } from './effect-columns.ts';
import type { LatentModel, Observations, SparseRows } from './latent-model.ts';
import { type OrthonormalColumns, orthonormalColumns } from './orthonormal-columns.ts';

/**
 * A model laid out for the solver. All effects are standardised, u = sd × x with x ~ Normal(0, 1), so that an sd of zero
 * is nothing special (Bates, Maechler, Bolker and Walker, J. Stat. Software 67(1), 2015, section 3). The term with the most
 * levels among those with at most one level a row (events, in a venue) is eliminated first: its own block is diagonal.
 * What remains, the columns, is kept as one dense symmetric matrix.
 *
 * The vector of all standardised effects has the eliminated levels first, then the columns.
 */
export interface PreparedModel {
  readonly rows: number;
  readonly observations: Observations;
  /** Rows not known exactly. */
  readonly censored: Int32Array;
  readonly blocks: readonly TermBlock[];
  /** Index of the eliminated term, −1 if none. */
  readonly eliminated: number;
  readonly levels: number;
  /** Level of each row (−1 for none) and its weight. */
  readonly level: Int32Array;
  readonly levelWeight: Float64Array;
  /** Rows sorted by level; the rows without one are last, in group `levels`. */
  readonly groupStart: Int32Array;
  readonly groupRows: Int32Array;
  /** The columns: entries of each row in ascending order. */
  readonly columns: number;
  readonly size: number;
  readonly entries: SparseRows;
  /** Which columns meet each level: a list a level, and for each entry its place in its level's list. */
  readonly crossStart: Int32Array;
  readonly crossColumn: Int32Array;
  readonly entryPlace: Int32Array;
  readonly fixed: OrthonormalColumns;
  /** First column of the fixed effects if they are integrated, −1 if they are maximised and stay outside. */
  readonly fixedOffset: number;
}

/**
 * @throws {RangeError} where bounds are crossed or not numbers, or lengths differ
 */
export function prepareModel(model: LatentModel, isFixedIntegrated: boolean): PreparedModel {
  const rows = checkedRows(model);
  const fixed = orthonormalColumns(model.fixed.map(({ values }) => values));
  const eliminated = eliminatedTerm(model);
  let offset = 0;
  const blocks = model.terms.map((term, index) => {
    const block = termBlock(term, index === eliminated ? -1 : offset);
    if (index !== eliminated) offset += block.count;
    return block;
  });
  const fixedOffset = isFixedIntegrated ? offset : -1;
  const columns = offset + (isFixedIntegrated ? fixed.q.length : 0);
  const entries = mergedEntries(model, blocks, eliminated, isFixedIntegrated ? fixed.q : [], offset);
  const level = new Int32Array(rows).fill(-1);
  const levelWeight = new Float64Array(rows);
  const levels = eliminated < 0 ? 0 : blocks[eliminated]!.count;
  if (eliminated >= 0) {
    const { rowStart, column, weight } = model.terms[eliminated]!.rows;
    for (let i = 0; i < rows; i++) {
      if (rowStart[i + 1]! === rowStart[i]!) continue;
      level[i] = column[rowStart[i]!]!;
      levelWeight[i] = weight[rowStart[i]!]!;
    }
  }
  const { lower, upper } = model.observations;
  const censored = Int32Array.from({ length: rows }, (_, i) => i).filter((i) => lower[i] !== upper[i]);
  return {
    rows,
    observations: model.observations,
    censored,
    blocks,
    eliminated,
    levels,
    level,
    levelWeight,
    ...groupsOf(level, levels),
    columns,
    size: paddedSize(columns),
    entries,
    ...crossPattern(level, levels, entries, columns),
    fixed,
    fixedOffset,
  };
}

function checkedRows({ observations: { lower, upper }, fixed, terms }: LatentModel): number {
  const rows = lower.length;
  if (upper.length !== rows) throw new RangeError(`${rows} lower bounds and ${upper.length} upper bounds`);
  for (let i = 0; i < rows; i++) {
    const isSettled = lower[i]! < upper[i]! || (lower[i] === upper[i] && Number.isFinite(lower[i]));
    if (!isSettled) throw new RangeError(`row ${i}: bounds ${lower[i]} and ${upper[i]} hold no value`);
  }
  for (const { name, values } of fixed) {
    if (values.length !== rows) throw new RangeError(`fixed effect ${name}: ${values.length} values for ${rows} rows`);
    if (!values.every(Number.isFinite)) throw new RangeError(`fixed effect ${name}: not all values are finite numbers`);
  }
  for (const { name, columns, rows: of } of terms) {
    if (of.rowStart.length !== rows + 1)
      throw new RangeError(`term ${name}: ${of.rowStart.length - 1} rows for ${rows}`);
    if (!of.weight.every(Number.isFinite)) throw new RangeError(`term ${name}: not all weights are finite numbers`);
    if (of.column.some((c) => c < 0 || c >= columns))
      throw new RangeError(`term ${name}: a column outside 0 to ${columns - 1}`);
  }
  return rows;
}

function eliminatedTerm({ terms }: LatentModel): number {
  let best = -1;
  terms.forEach((term, index) => {
    if (!isOneLevelARow(term.prior, term.rows.rowStart)) return;
    if (best < 0 || term.columns > terms[best]!.columns) best = index;
  });
  return best;
}

function mergedEntries(
  { observations, terms }: LatentModel,
  blocks: readonly TermBlock[],
  eliminated: number,
  fixed: readonly Float64Array[],
  fixedOffset: number,
): SparseRows {
  const rows = observations.lower.length;
  const rowStart = new Int32Array(rows + 1);
  const column: number[] = [];
  const weight: number[] = [];
  const row = { column: [] as number[], weight: [] as number[] };
  for (let i = 0; i < rows; i++) {
    row.column.length = 0;
    row.weight.length = 0;
    terms.forEach((term, index) => {
      if (index !== eliminated) appendRow(row, blocks[index]!, term, i);
    });
    fixed.forEach((values, k) => {
      row.column.push(fixedOffset + k);
      row.weight.push(values[i]!);
    });
    for (const k of row.column.map((_, at) => at).sort((a, b) => row.column[a]! - row.column[b]!)) {
      column.push(row.column[k]!);
      weight.push(row.weight[k]!);
    }
    rowStart[i + 1] = column.length;
  }
  return { rowStart, column: Int32Array.from(column), weight: Float64Array.from(weight) };
}

function groupsOf(level: Int32Array, levels: number): Pick<PreparedModel, 'groupStart' | 'groupRows'> {
  const groupStart = new Int32Array(levels + 2);
  for (const l of level) groupStart[(l < 0 ? levels : l) + 1]!++;
  for (let g = 0; g <= levels; g++) groupStart[g + 1] = groupStart[g + 1]! + groupStart[g]!;
  const next = groupStart.slice();
  const groupRows = new Int32Array(level.length);
  level.forEach((l, i) => {
    groupRows[next[l < 0 ? levels : l]!++] = i;
  });
  return { groupStart, groupRows };
}

function crossPattern(
  level: Int32Array,
  levels: number,
  { rowStart, column }: SparseRows,
  columns: number,
): Pick<PreparedModel, 'crossStart' | 'crossColumn' | 'entryPlace'> {
  const { groupStart, groupRows } = groupsOf(level, levels);
  const crossStart = new Int32Array(levels + 1);
  const crossColumn: number[] = [];
  const entryPlace = new Int32Array(column.length).fill(-1);
  const place = new Int32Array(columns).fill(-1);
  for (let l = 0; l < levels; l++) {
    const met: number[] = [];
    for (let r = groupStart[l]!; r < groupStart[l + 1]!; r++) {
      const row = groupRows[r]!;
      for (let k = rowStart[row]!; k < rowStart[row + 1]!; k++) {
        if (place[column[k]!]! < 0) {
          place[column[k]!] = 0;
          met.push(column[k]!);
        }
      }
    }
    met.sort((a, b) => a - b);
    met.forEach((c, at) => {
      place[c] = crossStart[l]! + at;
      crossColumn.push(c);
    });
    for (let r = groupStart[l]!; r < groupStart[l + 1]!; r++) {
      const row = groupRows[r]!;
      for (let k = rowStart[row]!; k < rowStart[row + 1]!; k++) entryPlace[k] = place[column[k]!]!;
    }
    for (const c of met) place[c] = -1;
    crossStart[l + 1] = crossColumn.length;
  }
  return { crossStart, crossColumn: Int32Array.from(crossColumn), entryPlace };
}
