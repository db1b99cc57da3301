import type { Month } from '../../../src/domain/day.ts';
import { MONTHS } from '../../../src/domain/day.ts';
import { type Peg, type PegKey, pegKey } from '../../../src/domain/peg.ts';

/**
 * What the bags were drawn from, on the log scale (natural log of kilograms): a session's expected log weight is
 * `mean + event + angler + peg + Σ over the peg's features (feature + featureMonth)`, with normal scatter `residual`.
 */
export interface Truth {
  readonly mean: number;
  readonly events: Readonly<Record<string, number>>;
  readonly anglers: Readonly<Record<string, number>>;
  readonly pegs: Readonly<Record<PegKey, number>>;
  readonly features: Readonly<Record<string, number>>;
  /** Twelve values from January, summing to zero, for each feature. */
  readonly featureMonths: Readonly<Record<string, readonly number[]>>;
  readonly residualSd: number;
  /** How far each water's days lie from the mean on the last day of the log; not at all where left out. */
  readonly waters?: Readonly<Record<string, number>>;
}

/** A true worth of a feature in a month, on the log scale. */
export interface TrueFeatureMonth {
  readonly feature: string;
  readonly month: Month;
  readonly logWorth: number;
}

/** A true worth of a peg in a month, on the log scale. */
export interface TruePegMonth {
  readonly water: string;
  readonly peg: string;
  readonly month: Month;
  readonly logWorth: number;
}

/** Standard deviations that a truth's effects happen to have, on the log scale. */
export interface TrueSpread {
  readonly event: number;
  readonly angler: number;
  readonly peg: number;
  readonly feature: number;
  /** Scale of a cyclic walk with the features' months as its steps. */
  readonly featureMonth: number;
  readonly residual: number;
}

/** The spread of a truth's effects as they were drawn or set. */
export function trueSpread(truth: Truth): TrueSpread {
  const walks = Object.values(truth.featureMonths);
  const squaredSteps = walks.flatMap((walk) => walk.map((value, i) => (value - walk[(i + 1) % walk.length]!) ** 2));
  // A cyclic walk of n values has n − 1 free ones: its squared steps over the scale squared are chi-squared on n − 1.
  const freedom = walks.reduce((sum, walk) => sum + walk.length - 1, 0);
  return {
    event: standardDeviation(Object.values(truth.events)),
    angler: standardDeviation(Object.values(truth.anglers)),
    peg: standardDeviation(Object.values(truth.pegs)),
    feature: standardDeviation(Object.values(truth.features)),
    featureMonth: Math.sqrt(squaredSteps.reduce((sum, value) => sum + value, 0) / freedom),
    residual: truth.residualSd,
  };
}

function standardDeviation(values: readonly number[]): number {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  return Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (values.length - 1));
}

/** What a feature adds in a month: its level over the year and its month's part. */
function featureEffect(truth: Truth, feature: string, month: Month): number {
  return (truth.features[feature] ?? 0) + (truth.featureMonths[feature]?.[month - 1] ?? 0);
}

/** A peg's own effect and its features' in a month, before any comparison. */
export function pegSum(truth: Truth, peg: Peg, month: Month): number {
  const own = truth.pegs[pegKey(peg.water, peg.peg)] ?? 0;
  return peg.features.reduce((sum, feature) => sum + featureEffect(truth, feature, month), own);
}

/** True par of every water in every month on the last day of the log, on the log scale. */
export function truePars(truth: Truth, pegs: readonly Peg[]): { water: string; month: Month; mean: number }[] {
  return [...Map.groupBy(pegs, (peg) => peg.water)].flatMap(([water, ofWater]) =>
    MONTHS.map((month) => {
      const sum = ofWater.reduce((all, peg) => all + pegSum(truth, peg, month), 0);
      return { water, month, mean: truth.mean + (truth.waters?.[water] ?? 0) + sum / ofWater.length };
    }),
  );
}

/** The true worth of every peg in every month: its sum less the mean of the same over its water's pegs. */
export function truePegMonths(truth: Truth, pegs: readonly Peg[]): TruePegMonth[] {
  const waters = Map.groupBy(pegs, (peg) => peg.water);
  return MONTHS.flatMap((month) =>
    [...waters.values()].flatMap((ofWater) => {
      const sums = ofWater.map((peg) => pegSum(truth, peg, month));
      const mean = sums.reduce((total, sum) => total + sum, 0) / sums.length;
      return ofWater.map((peg, i) => ({ water: peg.water, peg: peg.peg, month, logWorth: sums[i]! - mean }));
    }),
  );
}

/**
 * The true worth of every feature in every month: what it adds, less what par counts of it, which is its effect times
 * the share of the water's pegs that have it; averaged over the waters as the pegs that have it lie.
 */
export function trueFeatureMonths(truth: Truth, pegs: readonly Peg[]): TrueFeatureMonth[] {
  const waters = [...Map.groupBy(pegs, (peg) => peg.water).values()];
  return Object.keys(truth.features).flatMap((feature) => {
    const carriers = waters.map((ofWater) => ofWater.filter((peg) => peg.features.includes(feature)).length);
    const all = carriers.reduce((sum, count) => sum + count, 0);
    if (all === 0) return [];
    const contrast = waters.reduce(
      (sum, ofWater, i) => sum + (carriers[i]! / all) * (1 - carriers[i]! / ofWater.length),
      0,
    );
    return MONTHS.map((month) => ({ feature, month, logWorth: featureEffect(truth, feature, month) * contrast }));
  });
}
