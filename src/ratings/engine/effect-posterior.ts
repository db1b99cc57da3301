import type { LatentState } from './latent-state.ts';
import type { PreparedModel } from './prepared-model.ts';

/** The effects' normal posterior at one set of parameters: its mode, and its covariance H⁻¹ by blocks. */
export interface EffectPosterior {
  readonly prepared: PreparedModel;
  readonly x: Float64Array;
  readonly scale: Float64Array;
  readonly eliminatedSd: number;
  readonly diagonal: Float64Array;
  readonly cross: Float64Array;
  /** S⁻¹ by rows, `prepared.size` wide. */
  readonly inverse: Float64Array;
}

/** Copies what a state knows at its mode, so that the state may move on. `inverse` is kept, not copied. */
export function effectPosterior({ prepared, system, x }: LatentState, inverse: Float64Array): EffectPosterior {
  return {
    prepared,
    x: x.slice(),
    scale: system.scale.slice(),
    eliminatedSd: system.eliminatedSd,
    diagonal: system.diagonal.slice(),
    cross: system.cross.slice(),
    inverse,
  };
}
