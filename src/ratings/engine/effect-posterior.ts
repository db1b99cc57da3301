import type { LatentState } from './latent-state.ts';
import type { PreparedModel } from './prepared-model.ts';

/** The effects' normal posterior at one set of parameters: its mode, and its covariance by blocks. */
export interface EffectPosterior {
  readonly prepared: PreparedModel;
  /** Modes of all effects, eliminated levels first. */
  readonly effects: Float64Array;
  readonly eliminatedSd: number;
  readonly diagonal: Float64Array;
  readonly cross: Float64Array;
  /** Covariance of the columns' effects, by rows. */
  readonly covariance: Float64Array;
}

/** What a state knows where it stands, until it moves on. The system's covariance must be up to date. */
export function posteriorHere({ prepared, system, effects }: LatentState): EffectPosterior {
  const { eliminatedSd, diagonal, cross, overEffects } = system;
  return { prepared, effects, eliminatedSd, diagonal, cross, covariance: overEffects };
}

/** The same, copied, so that the state may move on. */
export function effectPosterior(state: LatentState): EffectPosterior {
  const here = posteriorHere(state);
  return {
    ...here,
    effects: here.effects.slice(),
    diagonal: here.diagonal.slice(),
    cross: here.cross.slice(),
    covariance: here.covariance.slice(),
  };
}
