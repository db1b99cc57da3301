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

/** Copies what a state knows at its mode, so that the state may move on. The system's covariance must be up to date. */
export function effectPosterior({ prepared, system, effects }: LatentState): EffectPosterior {
  return {
    prepared,
    effects: effects.slice(),
    eliminatedSd: system.eliminatedSd,
    diagonal: system.diagonal.slice(),
    cross: system.cross.slice(),
    covariance: system.overEffects.slice(),
  };
}
