import { eachStandardised } from './effect-columns.ts';
import type { CombinationPosterior, LatentModel, LinearCombination } from './latent-model.ts';
import type { LatentState } from './latent-state.ts';
import { quadraticFormInPlace } from './latent-system.ts';
import { solveUpperTransposedSmall } from './orthonormal-columns.ts';

/** Weights of a combination on all standardised effects at the state's sds. */
interface Standardised {
  readonly weights: Float64Array;
  /** False where it rests on a fixed effect no row can tell. */
  readonly isKnown: boolean;
  /** Part that does not vary: fixed effects that are maximised. */
  readonly constant: number;
}

/** Posterior means and sds at the parameters and the mode where the state stands. */
export function combinationPosterior(
  model: LatentModel,
  state: LatentState,
  fixedOnQ: Float64Array,
  combinations: readonly LinearCombination[],
): CombinationPosterior {
  const mean = new Float64Array(combinations.length);
  const sd = new Float64Array(combinations.length);
  combinations.forEach((combination, index) => {
    const { weights, isKnown, constant } = standardise(model, state, fixedOnQ, combination);
    let sum = constant;
    for (let i = 0; i < weights.length; i++) sum += weights[i]! * state.x[i]!;
    mean[index] = sum;
    sd[index] = isKnown
      ? Math.sqrt(Math.max(0, quadraticFormInPlace(state.system, weights)))
      : Number.POSITIVE_INFINITY;
  });
  return { mean, sd };
}

function standardise(
  model: LatentModel,
  state: LatentState,
  fixedOnQ: Float64Array,
  combination: LinearCombination,
): Standardised {
  const { prepared, system, x } = state;
  const { levels, blocks, fixed, fixedOffset } = prepared;
  const weights = new Float64Array(x.length);
  const beta = new Float64Array(fixed.kept.length);
  let isKnown = true;
  const add = ({ fixed: onFixed = [], effects, less }: LinearCombination, sign: number): void => {
    for (const { name, weight } of onFixed) {
      const index = model.fixed.findIndex((effect) => effect.name === name);
      if (index < 0) throw new RangeError(`no fixed effect ${name}`);
      const at = fixed.kept.indexOf(index);
      if (at >= 0) beta[at] = beta[at]! + sign * weight;
      else if (weight !== 0) isKnown = false;
    }
    for (const { term, column, weight } of effects) {
      const index = model.terms.findIndex(({ name }) => name === term);
      const block = blocks[index];
      if (block === undefined) throw new RangeError(`no term ${term}`);
      if (!(column >= 0 && column < block.stated)) throw new RangeError(`term ${term}: no column ${column}`);
      const from = block.offset < 0 ? 0 : levels + block.offset;
      const scale = block.offset < 0 ? system.eliminatedSd : (system.scale[block.offset] ?? 0);
      eachStandardised(block, column, sign * weight * scale, (standardised, share) => {
        weights[from + standardised] = weights[from + standardised]! + share;
      });
    }
    if (less !== undefined) add(less, -sign);
  };
  add(combination, 1);
  const onQ = solveUpperTransposedSmall(fixed.r, beta);
  if (fixedOffset >= 0) {
    weights.set(onQ, levels + fixedOffset);
    return { weights, isKnown, constant: 0 };
  }
  return { weights, isKnown, constant: onQ.reduce((sum, weight, k) => sum + weight * fixedOnQ[k]!, 0) };
}
