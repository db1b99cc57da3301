import { isInformative } from './bounds.ts';
import { checkedRows } from './checked-rows.ts';
import { paddedSize } from './cholesky.ts';
import {
  type ColumnPlaces,
  type CrossPattern,
  columnPlaces,
  crossPattern,
  type LevelGroups,
  levelGroups,
} from './cross-pattern.ts';
import { isOneLevelARow, type Stretch, stretches, type TermBlock, termBlock } from './effect-columns.ts';
import { exactProducts } from './exact-products.ts';
import type { LatentModel, Observations, SparseRows } from './latent-model.ts';
import { mergedEntries } from './merged-entries.ts';
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
export interface PreparedModel extends LevelGroups, CrossPattern {
  readonly rows: number;
  readonly observations: Observations;
  /** Rows not known exactly. */
  readonly censored: Int32Array;
  /** The first row that is known exactly, −1 if none: all of them weigh the same. */
  readonly firstExact: number;
  /** Zᵀ Z of the rows that are known exactly: see `exactProducts`. */
  readonly exactProducts: Float64Array;
  readonly blocks: readonly TermBlock[];
  readonly stretches: readonly Stretch[];
  /** Index of the eliminated term, −1 if none. */
  readonly eliminated: number;
  readonly levels: number;
  /** Level of each row (−1 for none) and its weight. */
  readonly level: Int32Array;
  readonly levelWeight: Float64Array;
  /** How many columns of effects, and of standardised effects; `size` is the latter padded for the kernels. */
  readonly effects: number;
  readonly columns: number;
  readonly size: number;
  /** Entries of each row over the effects, in ascending order. */
  readonly entries: SparseRows;
  /** Where each effect stands in the rows not known exactly, and where in the lists of the eliminated levels. */
  readonly censoredEntriesOf: ColumnPlaces;
  readonly crossesOf: ColumnPlaces;
  readonly fixed: OrthonormalColumns;
  /** First column of the fixed effects among effects and standardised effects; −1 if they are maximised and stay outside. */
  readonly fixedEffectFrom: number;
  readonly fixedFrom: number;
}

/** @throws {RangeError} where bounds are crossed or not numbers, or lengths differ */
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
  const groups = levelGroups(level, levels);
  const cross = crossPattern(groups, levels, entries, effects);
  const isExact = (row: number) => lower[row] === upper[row];
  const isCensored = (row: number) => !isExact(row);
  return {
    rows,
    observations: model.observations,
    censored: Int32Array.from({ length: rows }, (_, i) => i).filter(isCensored),
    firstExact: lower.findIndex((_, row) => isExact(row)),
    exactProducts: exactProducts(entries, effects, isExact),
    blocks,
    stretches: stretches(blocks, fixedPlace),
    eliminated,
    levels,
    level,
    levelWeight,
    ...groups,
    effects,
    columns,
    size: paddedSize(columns),
    entries,
    censoredEntriesOf: columnPlaces(entries.rowStart, entries.column, effects, isCensored),
    ...cross,
    crossesOf: columnPlaces(cross.crossStart, cross.crossColumn, effects),
    fixed,
    fixedEffectFrom: isFixedIntegrated ? fixedPlace.effectFrom : -1,
    fixedFrom: isFixedIntegrated ? fixedPlace.from : -1,
  };
}

function eliminatedTerm({ terms }: LatentModel): number {
  let best = -1;
  terms.forEach((term, index) => {
    if (!isOneLevelARow(term.prior, term.rows.rowStart)) return;
    if (best < 0 || term.columns > terms[best]!.columns) best = index;
  });
  return best;
}
