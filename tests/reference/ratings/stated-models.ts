import type {
  FixedEffect,
  LinearCombination,
  Observations,
  RandomTerm,
} from '../../../src/ratings/engine/latent-model.ts';
import { factorRows, sparseRows } from '../../../src/ratings/engine/sparse-rows.ts';

/** Close enough to the best variances for ten significant figures. */
export const TIGHT = 1e-9;

export function exactly(values: readonly number[]): Observations {
  const y = Float64Array.from(values);
  return { lower: y, upper: y };
}

/** Bounds where null is an open side. */
export function within(lower: readonly (number | null)[], upper: readonly (number | null)[]): Observations {
  return {
    lower: Float64Array.from(lower, (bound) => bound ?? Number.NEGATIVE_INFINITY),
    upper: Float64Array.from(upper, (bound) => bound ?? Number.POSITIVE_INFINITY),
  };
}

export function intercept(rows: number): FixedEffect {
  return { name: 'intercept', values: new Float64Array(rows).fill(1) };
}

export function regressor(name: string, values: readonly number[]): FixedEffect {
  return { name, values: Float64Array.from(values) };
}

/** A factor's levels are numbered in ascending order of their names. */
export function factor(name: string, values: readonly (string | number)[]): RandomTerm {
  const levels = levelsOf(values);
  return {
    name,
    columns: levels.length,
    rows: factorRows(values.map((value) => levels.indexOf(value))),
    prior: { kind: 'independent' },
  };
}

/** One slope a level. */
export function slopes(name: string, groups: readonly (string | number)[], weights: readonly number[]): RandomTerm {
  const levels = levelsOf(groups);
  return {
    name,
    columns: levels.length,
    rows: sparseRows(groups.map((group, i) => [{ column: levels.indexOf(group), weight: weights[i]! }])),
    prior: { kind: 'independent' },
  };
}

function levelsOf<Value extends string | number>(values: readonly Value[]): Value[] {
  return [...new Set(values)].sort((a, b) => (a < b ? -1 : 1));
}

/** Each effect of a term by itself. */
export function eachOf({ name, columns }: RandomTerm): LinearCombination[] {
  return Array.from({ length: columns }, (_, column) => ({ effects: [{ term: name, column, weight: 1 }] }));
}
