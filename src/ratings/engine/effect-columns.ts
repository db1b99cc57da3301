import type { EffectPrior, RandomTerm } from './latent-model.ts';
import { walkBasis } from './walk-basis.ts';

/** Sparse rows under construction, one entry after another. */
interface Entries {
  readonly column: number[];
  readonly weight: number[];
}

/** Where a term's standardised effects x stand among the columns, and how they make its effects u. */
export interface TermBlock {
  readonly name: string;
  /** First column; −1 for the eliminated term, whose effects stand apart. */
  readonly offset: number;
  /** Number of standardised effects: one fewer a group for a walk, which sums to zero. */
  readonly count: number;
  /** Columns of the term as the model states them. */
  readonly stated: number;
  /** u = sd × B x in each group of a walk; null where u = sd × x. */
  readonly basis: Float64Array | null;
  readonly positions: number;
}

export function termBlock(term: RandomTerm, offset: number): TermBlock {
  const { name, columns: stated, prior } = term;
  if (prior.kind === 'independent') return { name, offset, count: stated, stated, basis: null, positions: 1 };
  const { positions } = prior;
  if (!(positions >= 2) || stated % positions !== 0) {
    throw new RangeError(
      `term ${name}: a walk over ${positions} positions needs whole groups of columns, found ${stated}`,
    );
  }
  const count = (stated / positions) * (positions - 1);
  return { name, offset, count, stated, basis: walkBasis(prior.kind, positions), positions };
}

/** Calls `visit` with the standardised column and weight of each entry that one stated column of a block stands for. */
export function eachStandardised(
  block: TermBlock,
  statedColumn: number,
  weight: number,
  visit: (column: number, weight: number) => void,
): void {
  if (block.basis === null) {
    visit(statedColumn, weight);
    return;
  }
  const inGroup = block.positions - 1;
  const group = Math.floor(statedColumn / block.positions);
  const position = statedColumn % block.positions;
  for (let k = 0; k < inGroup; k++) visit(group * inGroup + k, weight * block.basis[position * inGroup + k]!);
}

/** Effects u / sd of a block, one a stated column, from its standardised effects x. */
export function statedEffects(block: TermBlock, x: Float64Array): Float64Array {
  const effects = new Float64Array(block.stated);
  for (let column = 0; column < block.stated; column++) {
    let sum = 0;
    eachStandardised(block, column, 1, (standardised, weight) => {
      sum += weight * x[standardised]!;
    });
    effects[column] = sum;
  }
  return effects;
}

/** The standardised entries of one row of a term, appended with the block's offset. Entries that meet are added up. */
export function appendRow(into: Entries, block: TermBlock, term: RandomTerm, row: number): void {
  const first = into.column.length;
  for (let k = term.rows.rowStart[row]!; k < term.rows.rowStart[row + 1]!; k++) {
    eachStandardised(block, term.rows.column[k]!, term.rows.weight[k]!, (standardised, weight) => {
      const column = block.offset + standardised;
      let at = first;
      while (at < into.column.length && into.column[at]! !== column) at++;
      if (at === into.column.length) {
        into.column.push(column);
        into.weight.push(weight);
      } else {
        into.weight[at] = into.weight[at]! + weight;
      }
    });
  }
}

/** True where the term is independent and no row has more than one of its levels: its own block of the system is diagonal. */
export function isOneLevelARow(prior: EffectPrior, rowStart: Int32Array): boolean {
  if (prior.kind !== 'independent') return false;
  for (let i = 1; i < rowStart.length; i++) if (rowStart[i]! - rowStart[i - 1]! > 1) return false;
  return true;
}
