import { isInformative } from './bounds.ts';
import { paddedSize } from './cholesky.ts';
import { isOneLevelARow, type Stretch, stretches, type TermBlock, termBlock } from './effect-columns.ts';
import type { LatentModel, Observations, SparseRows } from './latent-model.ts';
import { type OrthonormalColumns, orthonormalColumns } from './orthonormal-columns.ts';

/**
 * A model laid out for the solver. The term with the most levels among those with at most one level a row (events, in a
 * venue) is eliminated first: its own block of the system is diagonal. All other effects, fixed ones last, are the columns; what
 * is left of the system over them is kept as one dense symmetric matrix.
 *
 * Effects u are what the model states; they are made of standardised effects, u = T x with x ~ Normal(0, 1), so that an sd of
 * zero is nothing special (Bates, Maechler, Bolker and Walker, J. Stat. Software 67(1), 2015, section 3). A vector of either has
 * the eliminated levels first, then the columns.
 */
export interface PreparedModel {
  readonly rows: number;
  readonly observations: Observations;
  /** Rows not known exactly. */
  readonly censored: Int32Array;
  readonly blocks: readonly TermBlock[];
  readonly stretches: readonly Stretch[];
  /** Index of the eliminated term, −1 if none. */
  readonly eliminated: number;
  readonly levels: number;
  /** Level of each row (−1 for none) and its weight. */
  readonly level: Int32Array;
  readonly levelWeight: Float64Array;
  /** Rows sorted by level; the rows without one are last, in group `levels`. */
  readonly groupStart: Int32Array;
  readonly groupRows: Int32Array;
  /** How many columns of effects, and of standardised effects; `size` is the latter padded for the kernels. */
  readonly effects: number;
  readonly columns: number;
  readonly size: number;
  /** Entries of each row over the effects, in ascending order. */
  readonly entries: SparseRows;
  /** Which columns meet each level: a list a level, and for each entry its place in its level's list. */
  readonly crossStart: Int32Array;
  readonly crossColumn: Int32Array;
  readonly entryPlace: Int32Array;
  readonly fixed: OrthonormalColumns;
  /** First column of the fixed effects among effects and standardised effects; −1 if they are maximised and stay outside. */
  readonly fixedEffectFrom: number;
  readonly fixedFrom: number;
}

/**
 * @throws {RangeError} where bounds are crossed or not numbers, or lengths differ
 */
export function prepareModel(model: LatentModel, isFixedIntegrated: boolean): PreparedModel {
  const rows = checkedRows(model);
  const { lower, upper } = model.observations;
  // A row that tells nothing must not make a fixed effect look known.
  const fixed = orthonormalColumns(
    model.fixed.map(({ values }) => values.map((value, i) => (isInformative(lower[i]!, upper[i]!) ? value : 0))),
  );
  const eliminated = eliminatedTerm(model);
  let effects = 0;
  let columns = 0;
  const blocks = model.terms.map((term, index) => {
    if (index === eliminated) return termBlock(term, -1, -1);
    const block = termBlock(term, effects, columns);
    effects += block.effects;
    columns += block.count;
    return block;
  });
  const integrated = isFixedIntegrated ? fixed.q : [];
  const fixedPlace = { effectFrom: effects, from: columns, count: integrated.length };
  const entries = mergedEntries(model, blocks, integrated, effects);
  effects += integrated.length;
  columns += integrated.length;
  const level = new Int32Array(rows).fill(-1);
  const levelWeight = new Float64Array(rows);
  const levels = eliminated < 0 ? 0 : blocks[eliminated]!.effects;
  if (eliminated >= 0) {
    const { rowStart, column, weight } = model.terms[eliminated]!.rows;
    for (let i = 0; i < rows; i++) {
      if (rowStart[i + 1]! === rowStart[i]!) continue;
      level[i] = column[rowStart[i]!]!;
      levelWeight[i] = weight[rowStart[i]!]!;
    }
  }
  const censored = Int32Array.from({ length: rows }, (_, i) => i).filter((i) => lower[i] !== upper[i]);
  return {
    rows,
    observations: model.observations,
    censored,
    blocks,
    stretches: stretches(blocks, fixedPlace),
    eliminated,
    levels,
    level,
    levelWeight,
    ...groupsOf(level, levels),
    effects,
    columns,
    size: paddedSize(columns),
    entries,
    ...crossPattern(level, levels, entries, effects),
    fixed,
    fixedEffectFrom: isFixedIntegrated ? fixedPlace.effectFrom : -1,
    fixedFrom: isFixedIntegrated ? fixedPlace.from : -1,
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

/** All columns' entries row by row. Terms follow each other in the order of their columns, so only entries of one term are sorted. */
function mergedEntries(
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
    kept.forEach((term, t) => {
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
        column.copyWithin(at + 1, at, next);
        weight.copyWithin(at + 1, at, next);
        column[at] = own;
        weight[at] = term.weight[k]!;
        next++;
      }
    });
    fixed.forEach((values, k) => {
      column[next] = fixedEffectFrom + k;
      weight[next++] = values[i]!;
    });
    rowStart[i + 1] = next;
  }
  return { rowStart, column: column.slice(0, next), weight: weight.slice(0, next) };
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
