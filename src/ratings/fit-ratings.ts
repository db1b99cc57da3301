import { fitLatentModel } from './engine/fit-latent-model.ts';
import type { FitOptions, LatentFit, LatentModel, WeakPriors } from './engine/latent-model.ts';
import { TERM } from './rating-model.ts';

/**
 * Weak priors of every fit of the ratings, on the log scale. They decide only where a log says next to nothing: a
 * handful of events, a single angler, a lone feature. Days may differ by any factor from 1 to 7 and more; pegs, their
 * features and the features' months mostly by less than half as much again, which is as far as anglers speak of
 * (common practice, no source); the scatter of bags is about a factor of 1.8, and anything from 1.2 to 10 is allowed.
 */
export const RATING_PRIORS: WeakPriors = {
  sdScale: 1,
  sdScaleOf: {
    [TERM.angler]: 0.5,
    [TERM.peg]: 0.3,
    [TERM.pegYear]: 0.3,
    [TERM.feature]: 0.3,
    [TERM.season]: 0.3,
    [TERM.wave]: 0.3,
    [TERM.waterYear]: 0.5,
  },
  residualMedian: 0.6,
  residualLogSd: 0.7,
  fixedSpread: 5,
};

/** Scale of the half-normal prior of how far what anglers choose spreads their bags. */
export const CHOICE_SD = 0.3;

/** Scatter of a log bag, by which the scale of a probit, whose own scatter is 1, is wider. */
const USUAL_SCATTER = RATING_PRIORS.residualMedian;

/** The same priors for whether a part is there at all, on the probit scale. */
export const PRESENCE_PRIORS: WeakPriors = {
  ...RATING_PRIORS,
  sdScale: RATING_PRIORS.sdScale / USUAL_SCATTER,
  sdScaleOf: Object.fromEntries(
    Object.entries(RATING_PRIORS.sdScaleOf ?? {}).map(([term, scale]) => [term, scale / USUAL_SCATTER]),
  ),
};

/**
 * How far a water's level may lie from the venue's, held: a handful of waters cannot tell, and within a factor of e² of
 * one another (two standard deviations) most do lie.
 */
const WATER_SD = 1;

/** How far the wave of the venue's year may swing, held: two numbers cannot tell how far others would, and few venues fish in August seven times what they fish in February. */
const VENUE_WAVE_SD = 1;

/** How far a stocking may move a water's level, held for the same reason: mostly by less than a factor of 2.7 (two of these). */
const STOCKING_SD = 0.5;

/**
 * Beyond so many effects, the largest term aside, the best variances stand for all: to average over them costs some
 * fifteen times the covariances, and a log of that size knows its variances well.
 */
const MAX_INTEGRATED = 2000;

/**
 * Where a fit of which nothing is known begins: about what the logs of the tests show. It decides how long the search is, not where it
 * ends.
 */
const USUAL_START: NonNullable<FitOptions['start']> = {
  sd: {
    [TERM.event]: 0.6,
    [TERM.waterSeason]: 0.1,
    [TERM.angler]: 0.3,
    [TERM.peg]: 0.15,
    [TERM.pegYear]: 0.15,
    [TERM.feature]: 0.1,
    [TERM.season]: 0.15,
    [TERM.wave]: 0.15,
    [TERM.waterYear]: 0.2,
  },
  residualSd: 0.6,
};

/** Fits a model of the ratings: variances integrated over, unless it is very large or asked otherwise. */
export function fitRatings(latent: LatentModel, options: FitOptions = {}): LatentFit {
  const sizes = latent.terms.map(({ columns }) => columns);
  const effects = sizes.reduce((sum, size) => sum + size, 0) - Math.max(0, ...sizes);
  return fitLatentModel(latent, {
    variances: effects > MAX_INTEGRATED ? 'mode' : 'integrated',
    weakPriors: RATING_PRIORS,
    start: USUAL_START,
    ...options,
    hold: {
      ...options.hold,
      sd: {
        [TERM.water]: WATER_SD,
        [TERM.venueWave]: VENUE_WAVE_SD,
        [TERM.stocking]: STOCKING_SD,
        ...options.hold?.sd,
      },
    },
  });
}

/** Where the fit of nearly the same model may begin. */
export function startFrom({ sd, residualSd }: LatentFit): NonNullable<FitOptions['start']> {
  return { sd, residualSd };
}

/** Where a fit may begin that averages over the variances: no sd is as good as zero there, and the way back from it takes many steps. */
export function awayFromZero(start: typeof USUAL_START): typeof USUAL_START {
  const sd = Object.entries(start.sd).map(([term, known]) => [
    term,
    Math.max(known, (USUAL_START.sd[term] ?? 0) / 1.5),
  ]);
  return { ...start, sd: Object.fromEntries(sd) };
}

/** The same for a log that holds this fit's and goes on: the effects begin where they were too. As it can be written and read again. */
export function goOnFrom({ sd, residualSd, mode }: LatentFit): NonNullable<FitOptions['start']> {
  const effects = Object.entries(mode.effects).map(([term, values]) => [term, Array.from(values)]);
  return { sd, residualSd, mode: { effects: Object.fromEntries(effects), fixed: mode.fixed } };
}
