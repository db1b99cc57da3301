import type { LatentModel, LinearCombination } from './latent-model.ts';
import { solveUpperTransposedSmall } from './orthonormal-columns.ts';
import type { PreparedModel } from './prepared-model.ts';

/** A combination as weights on the prepared model's effects: eliminated levels first, then columns, ascending. */
export interface CombinationWeights {
  readonly effects: Int32Array;
  readonly weights: Float64Array;
  /** What is subtracted, told apart so that it can be shared. */
  readonly minus: CombinationWeights | null;
  /** Weights on the coefficients of Q, where fixed effects are maximised and not among the effects. */
  readonly onFixed: Float64Array;
  /** False where it rests on a fixed effect no row can tell. */
  readonly isKnown: boolean;
}

/** Translates combinations; what shares a `less` keeps sharing it. */
export function combinationTranslator(
  model: LatentModel,
  prepared: PreparedModel,
): (combination: LinearCombination) => CombinationWeights {
  const termIndex = new Map(model.terms.map(({ name }, index) => [name, index]));
  const fixedIndex = new Map(model.fixed.map(({ name }, index) => [name, index]));
  const shared = new Map<LinearCombination, CombinationWeights>();
  const { levels, blocks, fixed, fixedEffectFrom } = prepared;
  // All weights of one combination: empty when it begins.
  const sums = new Float64Array(levels + prepared.effects);
  const isNamed = new Uint8Array(sums.length);
  const named: number[] = [];
  const add = (effect: number, weight: number): void => {
    if (isNamed[effect] === 0) named.push(effect);
    isNamed[effect] = 1;
    sums[effect] = sums[effect]! + weight;
  };
  const takeSums = (): Pick<CombinationWeights, 'effects' | 'weights'> => {
    const effects = new Int32Array(named).sort();
    const weights = new Float64Array(effects.length);
    let count = 0;
    for (const effect of effects) {
      if (sums[effect] === 0) continue;
      effects[count] = effect;
      weights[count++] = sums[effect]!;
    }
    return { effects: effects.subarray(0, count), weights: weights.subarray(0, count) };
  };
  const begin = (): void => {
    for (const effect of named) {
      sums[effect] = 0;
      isNamed[effect] = 0;
    }
    named.length = 0;
  };

  const translate = ({ fixed: onFixed = [], effects, minus }: LinearCombination): CombinationWeights => {
    begin();
    for (const { term, column, weight } of effects) {
      const block = blocks[termIndex.get(term) ?? -1];
      if (block === undefined) throw new RangeError(`no term ${term}`);
      if (!(column >= 0 && column < block.effects)) throw new RangeError(`term ${term}: no column ${column}`);
      add((block.effectFrom < 0 ? 0 : levels + block.effectFrom) + column, weight);
    }
    let isKnown = true;
    const beta = new Float64Array(fixed.kept.length);
    for (const { name, weight } of onFixed) {
      const index = fixedIndex.get(name);
      if (index === undefined) throw new RangeError(`no fixed effect ${name}`);
      const at = fixed.kept.indexOf(index);
      if (at >= 0) beta[at] = beta[at]! + weight;
      else if (weight !== 0) isKnown = false;
    }
    const onQ = onFixed.length === 0 ? beta : solveUpperTransposedSmall(fixed.r, beta);
    if (fixedEffectFrom >= 0) for (const [k, weight] of onQ.entries()) add(levels + fixedEffectFrom + k, weight);
    return {
      ...takeSums(),
      minus: minus === undefined ? null : translateShared(minus),
      onFixed: fixedEffectFrom >= 0 ? new Float64Array(0) : onQ,
      isKnown,
    };
  };
  const translateShared = (combination: LinearCombination): CombinationWeights => {
    const known = shared.get(combination) ?? translate(combination);
    shared.set(combination, known);
    return known;
  };
  return translate;
}

export function isKnown({ isKnown: own, minus }: CombinationWeights): boolean {
  return own && (minus === null || isKnown(minus));
}

/** A combination with its chain of `less` written out. */
export function flattened(combination: CombinationWeights): CombinationWeights {
  if (combination.minus === null) return combination;
  const rest = flattened(combination.minus);
  const sums = new Map<number, number>();
  combination.effects.forEach((effect, k) => {
    sums.set(effect, combination.weights[k]!);
  });
  rest.effects.forEach((effect, k) => {
    sums.set(effect, (sums.get(effect) ?? 0) - rest.weights[k]!);
  });
  const sorted = [...sums].sort(([a], [b]) => a - b);
  return {
    effects: Int32Array.from(sorted, ([effect]) => effect),
    weights: Float64Array.from(sorted, ([, weight]) => weight),
    minus: null,
    onFixed: combination.onFixed.map((weight, k) => weight - rest.onFixed[k]!),
    isKnown: isKnown(combination),
  };
}
