import type { PlanLattice } from './plan-lattice.ts';
import { type PlanProblem, sectionSizes } from './plan-problem.ts';
import type { WorthVectors } from './worth-draws.ts';

/**
 * A mean square below which no plan's sections can lie. With W_s the mean vector of section s and any vectors y_s that sum to
 * zero, Σ |W_s − W̄|² ≥ Σ (2 y_s·W_s − |y_s|²): the right side adds up over places, so the lattice finds its least value over
 * all plans exactly, and the y are made better by subgradient steps (Lagrangian duality; Held, Wolfe and Crowder,
 * Mathematical Programming 6, 1974). Every step's value is a true bound, so it may stop at any time.
 * @param best the mean square of a plan that is known: a start that cannot beat it is not looked at further
 */
export function leastMeanSquare(
  problem: PlanProblem,
  lattice: PlanLattice,
  worth: WorthVectors,
  best: number,
  steps: number,
): number {
  let least = Number.POSITIVE_INFINITY;
  for (const start of lattice.starts) {
    least = Math.min(least, boundOfStart(problem, lattice, worth, start, best, steps));
    if (least <= 0) return 0;
  }
  return Math.min(least, best);
}

function boundOfStart(
  problem: PlanProblem,
  lattice: PlanLattice,
  worth: WorthVectors,
  start: number,
  best: number,
  steps: number,
): number {
  const { sections } = problem;
  const { length } = worth;
  const y = new Float64Array(sections * length);
  let bound = 0;
  let scale = 1;
  let withoutGain = 0;
  for (let step = 0; step < steps; step++) {
    const products = placeProducts(worth, y, sections);
    const { small } = sectionSizes(problem);
    const found = lattice.cheapest(
      start,
      (place, section, isLarger) => (2 * products[section * worth.places + place]!) / (isLarger ? small + 1 : small),
    );
    if (found === null) return Number.POSITIVE_INFINITY;
    const square = y.reduce((sum, value) => sum + value * value, 0);
    const value = (found.cost - square) / sections;
    if (value > bound) {
      bound = value;
      withoutGain = 0;
    } else if (++withoutGain >= 5) {
      scale /= 2;
      withoutGain = 0;
    }
    if (bound >= best * (1 - 1e-9) || scale < 1e-3) return bound;
    ascend(y, found.plan, worth, sections, { best, value, scale });
  }
  return bound;
}

/** A step along the subgradient 2 (W_s − y_s) less its mean over the sections, as long as Polyak's rule says. */
function ascend(
  y: Float64Array,
  plan: readonly (readonly number[])[],
  { length, vectors }: WorthVectors,
  sections: number,
  { best, value, scale }: { readonly best: number; readonly value: number; readonly scale: number },
): void {
  const slope = new Float64Array(y.length);
  plan.forEach((section, s) => {
    for (const place of section) {
      for (let k = 0; k <= place; k++) {
        slope[s * length + k] = slope[s * length + k]! + (2 * vectors[place * length + k]!) / section.length;
      }
    }
  });
  let square = 0;
  for (let k = 0; k < length; k++) {
    let mean = 0;
    for (let s = 0; s < sections; s++) {
      slope[s * length + k] = slope[s * length + k]! - 2 * y[s * length + k]!;
      mean += slope[s * length + k]! / sections;
    }
    for (let s = 0; s < sections; s++) {
      slope[s * length + k] = slope[s * length + k]! - mean;
      square += slope[s * length + k]! ** 2;
    }
  }
  if (square === 0) return;
  const stride = (scale * Math.max(0, best - value) * sections) / square;
  for (let k = 0; k < y.length; k++) y[k] = y[k]! + stride * slope[k]!;
}

/** y_s · v_i of every section and place. */
function placeProducts({ places, length, vectors }: WorthVectors, y: Float64Array, sections: number): Float64Array {
  const products = new Float64Array(sections * places);
  for (let s = 0; s < sections; s++) {
    for (let i = 0; i < places; i++) {
      let product = 0;
      for (let k = 0; k <= i; k++) product += y[s * length + k]! * vectors[i * length + k]!;
      products[s * places + i] = product;
    }
  }
  return products;
}
