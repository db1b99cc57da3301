import type { LatentFit, LinearCombination } from './engine/latent-model.ts';
import { evidenceOf } from './evidence.ts';
import { interval80 } from './interval.ts';
import { priorSds } from './prior-sd.ts';
import type { RatingModel } from './rating-model.ts';
import type { Evidence } from './ratings.ts';

/** A return on the log scale, with what the guide says of its doubt. */
export interface ReturnWithDoubt {
  readonly logReturn: number;
  readonly sd: number;
  /** Multiples of par. */
  readonly low80: number;
  readonly high80: number;
  readonly sessions: number;
  readonly evidence: Evidence;
}

/** A model of the ratings, fitted. */
export interface FittedModel {
  readonly model: RatingModel;
  readonly fit: LatentFit;
}

/** A return to be told, and the number of sessions behind it. */
export interface AskedReturn {
  readonly combination: LinearCombination;
  readonly sessions: number;
}

/** Posterior returns, in the order asked. */
export function returnsOf({ model, fit }: FittedModel, asked: readonly AskedReturn[]): ReturnWithDoubt[] {
  const { mean, sd } = fit.posterior(asked.map(({ combination }) => combination));
  const priorSd = priorSds(model.latent, fit);
  return asked.map(({ combination, sessions }, i) => ({
    logReturn: mean[i]!,
    sd: sd[i]!,
    ...interval80(mean[i]!, sd[i]!),
    sessions,
    evidence: evidenceOf(sd[i]!, priorSd(combination)),
  }));
}
