import { fitLatentModel } from './engine/fit-latent-model.ts';
import type { FitOptions, LatentFit, LatentModel, WeakPriors } from './engine/latent-model.ts';

/**
 * Weak priors of every fit of the ratings, on the log scale. They decide only where a log says next to nothing: a
 * handful of events, a single angler. A day, peg or angler effect beyond a factor of e² is taken as unlikely; the
 * scatter of bags about a factor of 1.8, and anything from 1.2 to 10 is allowed.
 */
export const RATING_PRIORS: WeakPriors = { sdScale: 1, residualMedian: 0.6, residualLogSd: 0.7, fixedSpread: 5 };

/** Fits a model of the ratings: variances integrated over, unless asked otherwise. */
export function fitRatings(latent: LatentModel, options: FitOptions = {}): LatentFit {
  return fitLatentModel(latent, { variances: 'integrated', weakPriors: RATING_PRIORS, ...options });
}

/** Where the fit of nearly the same model may begin. */
export function startFrom({ sd, residualSd }: LatentFit): NonNullable<FitOptions['start']> {
  return { sd, residualSd };
}
