/**
 * The model of the engine, in numbers only. Row i has a value y that is known to lie in [lower, upper], and
 *
 *   y ~ Normal(η, residual sd²),   η = X β + Σ over terms ( Z u ),   u ~ Normal(0, sd² × structure of the term)
 *
 * with one sd a term, a flat (or weakly held) prior on β, and all sds estimated or held. Without censoring and with
 * flat priors the fit is restricted maximum likelihood (Patterson and Thompson, Biometrika 58, 1971).
 */
export interface LatentModel {
  readonly observations: Observations;
  readonly fixed: readonly FixedEffect[];
  readonly terms: readonly RandomTerm[];
}

/**
 * One pair of bounds a row. Equal bounds: the value is known exactly. `lower` −Infinity: left-censored, known only to be
 * at most `upper`. `upper` Infinity: right-censored. Both finite and apart: interval-censored. Both infinite: nothing
 * is known, the row has no weight. `lower` above `upper`, or NaN, is refused.
 */
export interface Observations {
  readonly lower: Float64Array;
  readonly upper: Float64Array;
  /**
   * Sd of the bounds of a row not known exactly, where they are blurred: its value plus Normal(0, blur²) lies within them,
   * so that the row speaks with sd √(residual sd² + blur²). Left out or 0: the bounds are sharp.
   */
  readonly blur?: Float64Array;
}

/** One column of X, one value a row. */
export interface FixedEffect {
  readonly name: string;
  readonly values: Float64Array;
}

/** A group of effects that share one sd. */
export interface RandomTerm {
  readonly name: string;
  /** How many effects u: levels of a factor, or groups × positions of a walk (column = group × positions + position). */
  readonly columns: number;
  readonly rows: SparseRows;
  readonly prior: EffectPrior;
}

/** Sparse matrix by rows: row i has `weight[k]` in `column[k]` for k from `rowStart[i]` up to, not including, `rowStart[i + 1]`. */
export interface SparseRows {
  readonly rowStart: Int32Array;
  readonly column: Int32Array;
  readonly weight: Float64Array;
}

/**
 * How the effects of a term hang together.
 * - `independent`: u ~ Normal(0, sd²).
 * - `cyclic-walk`: in every group of `positions` columns, first differences around the circle are Normal(0, sd²) and
 *   the group sums to zero: covariance sd² × pseudo-inverse of the circle's structure matrix (Rue and Held, Gaussian
 *   Markov Random Fields, 2005, ch. 3). Variance of one month: sd² × 143/144.
 * - `walk`: the same along a line with two ends.
 */
export type EffectPrior =
  | { readonly kind: 'independent' }
  | { readonly kind: 'cyclic-walk'; readonly positions: number }
  | { readonly kind: 'walk'; readonly positions: number };

/** Weak priors, in the units of y. Leave them out for restricted maximum likelihood. */
export interface WeakPriors {
  /** Every term's sd is half-normal with this scale. */
  readonly sdScale: number;
  /** Scales of terms, by name, that are looked for elsewhere than the rest. */
  readonly sdScaleOf?: Readonly<Record<string, number>>;
  /** The residual sd is log-normal: its median, and the sd of its logarithm. */
  readonly residualMedian: number;
  readonly residualLogSd: number;
  /** Prior sd of what each fixed effect does to a typical row, about the least-squares fit of the bounds. */
  readonly fixedSpread: number;
}

export interface FitOptions {
  /** `integrated` (the default): flat prior on β, as in restricted maximum likelihood. `maximised`: maximum likelihood. */
  readonly fixedEffects?: 'integrated' | 'maximised';
  /**
   * `mode` (the default): effects and their sds at the best variances. `integrated`: averaged over the variances'
   * posterior, which needs `weakPriors`; intervals grow by what the data leave open about the variances.
   */
  readonly variances?: 'mode' | 'integrated';
  readonly weakPriors?: WeakPriors;
  /** Values not to be estimated: sd of terms by name, the residual sd, fixed effects by name (with `maximised` only). */
  readonly hold?: {
    readonly sd?: Readonly<Record<string, number>>;
    readonly residualSd?: number;
    readonly fixed?: Readonly<Record<string, number>>;
  };
  /** Where to begin, from an earlier fit of nearly the same data: saves most of the iterations. */
  readonly start?: {
    readonly sd: Readonly<Record<string, number>>;
    readonly residualSd: number;
    /** Of a fit whose rows are among these, with its levels in the same order before any new ones. */
    readonly mode?: ModeStart;
  };
  /**
   * Distance from the best variances at which to stop, in units of their own posterior sd. Default 1e-6; 1e-3 where they are
   * integrated; 0.05 in a model of more than 1,200 columns.
   */
  readonly tolerance?: number;
  /** Default 60. */
  readonly maximumIterations?: number;
  /** Of the random signs that stand in for exact traces while a very large fit is under way. Default 1. */
  readonly seed?: number;
  /** Called once an iteration; a very large fit first tells of those of a smaller one that it starts from. */
  readonly progress?: (step: FitProgress) => void;
}

/** Where a fit had its effects, for another to begin from: standardised by term, fixed ones by name. */
export interface ModeStart {
  readonly effects: Readonly<Record<string, ArrayLike<number>>>;
  readonly fixed: Readonly<Record<string, number>>;
}

interface FitProgress {
  readonly iteration: number;
  readonly logMarginal: number;
  /** Distance still to go, in units of the variances' posterior sd. */
  readonly distance: number;
}

/**
 * Why a fit stopped. `converged`; `boundary`: converged with at least one sd at zero; `held`: nothing to estimate;
 * `no data`: no row says anything; `no further gain`: rounding hides any better point; `iteration limit`.
 */
export type StopReason = 'converged' | 'boundary' | 'held' | 'no data' | 'no further gain' | 'iteration limit';

/** A weighted sum of effects, less another where given: a worth is a peg's sum less the mean over its water. */
export interface LinearCombination {
  readonly fixed?: readonly { readonly name: string; readonly weight: number }[];
  readonly effects: readonly { readonly term: string; readonly column: number; readonly weight: number }[];
  /** Subtracted. Share one object between combinations that are compared with the same thing: it is solved for once. */
  readonly minus?: LinearCombination;
}

/** Posterior means and standard deviations of linear combinations, in the order asked. */
export interface CombinationPosterior {
  readonly mean: Float64Array;
  /** Infinity where a combination rests on a fixed effect that no row can tell. */
  readonly sd: Float64Array;
}

export interface LatentFit {
  /** Of every term, by name; exactly 0 at the boundary. */
  readonly sd: Readonly<Record<string, number>>;
  readonly residualSd: number;
  /** Standard errors of the logarithms of the sds, terms by name; 0 where held, Infinity at the boundary. */
  readonly logSdError: { readonly terms: Readonly<Record<string, number>>; readonly residual: number };
  /**
   * Laplace approximation of the log marginal likelihood at these sds, all constants kept, priors of the sds left out;
   * exact without censoring. Minus twice it is the REML criterion (or the ML deviance with `maximised`).
   */
  readonly logMarginal: number;
  /** Fixed effects by name. `sd` as in `posterior`; a fixed effect no row can tell is 0 with sd Infinity. */
  readonly fixed: Readonly<Record<string, { readonly value: number; readonly sd: number }>>;
  readonly iterations: number;
  /** Factorisations of the full system, the unit of cost. */
  readonly factorisations: number;
  readonly stopped: StopReason;
  /** Modes of a term's effects at these sds, one a column (a walk's months, not its eigenvectors). */
  effects(term: string): Float64Array;
  /** Where a fit of nearly the same data may begin to look for its own mode. */
  readonly mode: ModeStart;
  /** Averaged over the variances when they are integrated. Fixed effects are integrated out unless `maximised`. */
  posterior(combinations: readonly LinearCombination[]): CombinationPosterior;
  /** Means of combinations and their covariance with one another, by rows, at these sds; fixed effects integrated out. */
  jointAtMode(combinations: readonly LinearCombination[]): {
    readonly mean: Float64Array;
    readonly covariance: Float64Array;
  };
  /** Covariances of combinations with others at these sds, a row for each combination; fixed effects integrated out. */
  crossAtMode(combinations: readonly LinearCombination[], others: readonly LinearCombination[]): Float64Array[];
}
