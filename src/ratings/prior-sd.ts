import type { EffectPrior, LatentFit, LatentModel, LinearCombination } from './engine/latent-model.ts';

/**
 * Standard deviation of a combination before any session was seen, at the fit's own standard deviations of the terms.
 * Of a walk it takes combinations that touch one position a group, as returns do.
 */
export function priorSd(combination: LinearCombination, model: LatentModel, fit: LatentFit): number {
  const terms = new Map(model.terms.map((term) => [term.name, term]));
  let variance = 0;
  for (const [key, weight] of netWeights(combination)) {
    const [name, column] = [key.slice(0, key.lastIndexOf(' ')), Number(key.slice(key.lastIndexOf(' ') + 1))];
    const term = terms.get(name);
    if (term !== undefined) variance += (weight * fit.sd[name]!) ** 2 * unitVariance(term.prior, column);
  }
  return Math.sqrt(variance);
}

function netWeights(combination: LinearCombination): ReadonlyMap<string, number> {
  const weights = new Map<string, number>();
  const add = ({ effects, less }: LinearCombination, sign: number) => {
    for (const { term, column, weight } of effects) {
      const key = `${term} ${column}`;
      weights.set(key, (weights.get(key) ?? 0) + sign * weight);
    }
    if (less !== undefined) add(less, -sign);
  };
  add(combination, 1);
  return weights;
}

/** Prior variance of one effect of a term whose standard deviation is 1: the diagonal of the walk's pseudo-inverse. */
export function unitVariance(prior: EffectPrior, column: number): number {
  if (prior.kind === 'independent') return 1;
  const n = prior.positions;
  // Closed forms of the Green's functions of the circle and of the path (Rue and Held, 2005, ch. 3, for the structures).
  if (prior.kind === 'cyclic-walk') return (n * n - 1) / (12 * n);
  const i = column % n;
  return ((n - 1) * (2 * n - 1)) / (6 * n) - (i * (n - 1 - i)) / n;
}
