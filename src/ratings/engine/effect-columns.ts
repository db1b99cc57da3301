import type { EffectPrior, RandomTerm } from './latent-model.ts';
import { walkBasis } from './walk-basis.ts';

/**
 * Where a term's effects u and its standardised effects x stand among the columns: u = sd × x for an independent term,
 * u = sd × B x in each group of a walk, which has one x fewer because it sums to zero.
 */
export interface TermBlock {
  readonly name: string;
  /** First column of u, and of x; −1 for the eliminated term, whose effects stand apart. */
  readonly effectFrom: number;
  readonly from: number;
  readonly effects: number;
  readonly count: number;
  /** B by rows; null for an independent term. */
  readonly basis: Float64Array | null;
  readonly positions: number;
}

/** @throws {RangeError} where a walk's columns are not whole groups */
export function termBlock({ name, columns, prior }: RandomTerm, effectFrom: number, from: number): TermBlock {
  const place = { name, effectFrom, from, effects: columns };
  if (prior.kind === 'independent') return { ...place, count: columns, basis: null, positions: 1 };
  const { positions } = prior;
  if (!(positions >= 2) || columns % positions !== 0) {
    throw new RangeError(
      `term ${name}: a walk over ${positions} positions needs whole groups, found ${columns} columns`,
    );
  }
  const count = (columns / positions) * (positions - 1);
  return { ...place, count, basis: walkBasis(prior.kind, positions), positions };
}

/** True where no row has more than one level of an independent term: its own block of the system is diagonal. */
export function isOneLevelARow(prior: EffectPrior, rowStart: Int32Array): boolean {
  if (prior.kind !== 'independent') return false;
  for (let i = 1; i < rowStart.length; i++) if (rowStart[i]! - rowStart[i - 1]! > 1) return false;
  return true;
}

/**
 * A stretch of columns that stays together when effects are made of standardised ones: a whole independent term, one group of a
 * walk, or the fixed effects. u = scale × M x over the stretch, M the basis or, where null, the identity.
 */
export interface Stretch {
  readonly effectFrom: number;
  readonly effects: number;
  readonly from: number;
  readonly count: number;
  readonly basis: Float64Array | null;
  /** Index of the term, −1 for fixed effects. */
  readonly term: number;
}

/** The stretches of all columns, in order. */
export function stretches(
  blocks: readonly TermBlock[],
  fixed: { readonly effectFrom: number; readonly from: number; readonly count: number },
): Stretch[] {
  const ofTerms = blocks.flatMap(({ effectFrom, from, effects, count, basis, positions }, term): Stretch[] => {
    if (effectFrom < 0) return [];
    if (basis === null) return [{ effectFrom, effects, from, count, basis, term }];
    return Array.from({ length: effects / positions }, (_, group) => ({
      effectFrom: effectFrom + group * positions,
      effects: positions,
      from: from + group * (positions - 1),
      count: positions - 1,
      basis,
      term,
    }));
  });
  const { effectFrom, from, count } = fixed;
  return count === 0 ? ofTerms : [...ofTerms, { effectFrom, effects: count, from, count, basis: null, term: -1 }];
}
