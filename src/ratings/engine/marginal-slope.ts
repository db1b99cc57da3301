import type { EffectVariances } from './effect-variances.ts';
import type { LatentState } from './latent-state.ts';
import { solveSystemInPlace } from './latent-system.ts';
import { termPartInPlace, transposedProductInPlace } from './linear-predictor.ts';

/** Which parameters are estimated, in the order of the gradient: log sds of terms, then log σ, then β on Q. */
export interface FreeParameters {
  readonly terms: readonly number[];
  readonly isResidualFree: boolean;
  /** Columns of Q whose coefficients are maximised. */
  readonly fixed: readonly number[];
}

export function freeCount({ terms, isResidualFree, fixed }: FreeParameters): number {
  return terms.length + (isResidualFree ? 1 : 0) + fixed.length;
}

/** First derivatives of the log marginal likelihood at the mode, and a positive semidefinite stand-in for minus the second. */
export interface MarginalSlope {
  readonly gradient: Float64Array;
  /** Average information, by rows. */
  readonly information: Float64Array;
}

/**
 * Derivatives of the Laplace log marginal by the log sds, log σ and β, with the implicit part: when a parameter moves, the mode
 * moves, and with it the weights of censored rows (Skaug and Fournier, Computational Statistics and Data Analysis 51, 2006).
 *
 * With H = Aᵀ W A + P, h the posterior variances of η and x the mode, the derivative by the log sd of term t is
 *   xₜᵀxₜ − (qₜ − tr (H⁻¹)ₜₜ) − ½ Σ W′ h dη,
 * and the adjoint s = H⁻¹ Aᵀ(W′h) gives Σ W′ h dη for every parameter from one solution. Without censored rows W′ = 0 and this
 * is the score of restricted maximum likelihood. The information is that of Gilmour, Thompson and Cullis (Biometrics 51, 1995):
 * half the quadratic forms of the working vectors in P = W − W A H⁻¹ Aᵀ W.
 */
export function marginalSlope(state: LatentState, free: FreeParameters, variances: EffectVariances): MarginalSlope {
  const { prepared, system, likelihood, x } = state;
  const { rows, levels } = prepared;
  const count = freeCount(free);
  const gradient = new Float64Array(count);
  const working = Array.from({ length: count }, () => new Float64Array(rows));
  const products: Float64Array[] = [];
  const adjoint = adjointOf(state, variances);

  free.terms.forEach((term, at) => {
    const part = working[at]!;
    termPartInPlace(part, system, state.effects, term);
    const { from: column, count: effects } = prepared.blocks[term]!;
    const from = column < 0 ? 0 : levels + column;
    let squares = 0;
    let implicit = 0;
    for (let i = from; i < from + effects; i++) {
      squares += x[i]! * x[i]!;
      implicit += adjoint.effects[i]! * x[i]!;
    }
    products[at] = weightedProduct(state, part);
    implicit += adjoint.alongRows(part, products[at]!);
    gradient[at] = squares - (effects - variances.trace[term]!) - 0.5 * implicit;
  });

  let at = free.terms.length;
  if (free.isResidualFree) {
    gradient[at] = residualSlope(state, variances, adjoint.effects);
    const part = working[at]!;
    for (let i = 0; i < rows; i++) {
      const weight = likelihood.weight[i]!;
      part[i] = weight > 0 ? (-0.5 * likelihood.slopeBySpread[i]!) / weight : 0;
    }
    products[at++] = weightedProduct(state, part);
  }
  for (const column of free.fixed) {
    const q = prepared.fixed.q[column]!;
    let slope = -0.5 * adjoint.alongRows(q, weightedProduct(state, q));
    for (let i = 0; i < rows; i++) slope += q[i]! * likelihood.slope[i]!;
    gradient[at] = slope;
    // Half-information of β is on another scale than that of log sds: dη/dβ = q, d²ℓ = qᵀPq, so the vector is q / √2.
    const part = working[at]!;
    for (let i = 0; i < rows; i++) part[i] = q[i]! * Math.SQRT1_2;
    products[at++] = weightedProduct(state, part);
  }
  return { gradient, information: averageInformation(state, working, products, free) };
}

interface Adjoint {
  readonly effects: Float64Array;
  /** Σ W′h dη for a direct change of η by `part`, with its weighted product, and what the mode does in answer. */
  alongRows(part: Float64Array, product: Float64Array): number;
}

/** Aᵀ W r. */
function weightedProduct({ system, likelihood, rowScratch, x }: LatentState, r: Float64Array): Float64Array {
  for (let i = 0; i < r.length; i++) rowScratch[i] = likelihood.weight[i]! * r[i]!;
  const product = new Float64Array(x.length);
  transposedProductInPlace(product, system, rowScratch);
  return product;
}

function adjointOf(state: LatentState, { leverage }: EffectVariances): Adjoint {
  const { prepared, system, likelihood, x } = state;
  const effects = new Float64Array(x.length);
  if (prepared.censored.length === 0) return { effects, alongRows: () => 0 };
  const pull = new Float64Array(prepared.rows);
  for (const row of prepared.censored) pull[row] = likelihood.weightSlope[row]! * leverage[row]!;
  transposedProductInPlace(effects, system, pull);
  solveSystemInPlace(system, effects);
  return {
    effects,
    alongRows: (part, product) => {
      let sum = 0;
      for (const row of prepared.censored) sum += pull[row]! * part[row]!;
      for (let i = 0; i < product.length; i++) sum -= effects[i]! * product[i]!;
      return sum;
    },
  };
}

function residualSlope(state: LatentState, variances: EffectVariances, adjoint: Float64Array): number {
  const { prepared, system, likelihood, x } = state;
  // Σ of weight × variance of η over all rows is known from the trace; the exact rows' share is what the others leave.
  let exact = x.length - variances.fixedTrace * system.fixedPrecision;
  for (const trace of variances.trace) exact -= trace;
  let change = 0;
  for (const row of prepared.censored) {
    exact -= likelihood.weight[row]! * variances.leverage[row]!;
    change += likelihood.weightBySpread[row]! * variances.leverage[row]!;
  }
  change -= 2 * exact;
  const answer = new Float64Array(x.length);
  if (prepared.censored.length > 0) {
    transposedProductInPlace(answer, system, likelihood.slopeBySpread);
    for (let i = 0; i < x.length; i++) change += adjoint[i]! * answer[i]!;
  }
  return likelihood.totalBySpread - 0.5 * change;
}

/** @param products the weighted product of each working vector */
function averageInformation(
  { system, likelihood }: LatentState,
  working: readonly Float64Array[],
  products: readonly Float64Array[],
  free: FreeParameters,
): Float64Array {
  const count = working.length;
  const information = new Float64Array(count * count);
  products.forEach((product, a) => {
    const solved = product.slice();
    solveSystemInPlace(system, solved);
    for (let b = 0; b <= a; b++) {
      let sum = 0;
      const one = working[a]!;
      const other = working[b]!;
      for (let i = 0; i < one.length; i++) sum += likelihood.weight[i]! * one[i]! * other[i]!;
      for (let i = 0; i < solved.length; i++) sum -= solved[i]! * products[b]![i]!;
      // Mean and spread are orthogonal in expectation: leave their cross information out.
      const isMixed = a >= count - free.fixed.length && b < count - free.fixed.length;
      information[a * count + b] = isMixed ? 0 : 2 * sum;
      information[b * count + a] = information[a * count + b]!;
    }
  });
  return information;
}
