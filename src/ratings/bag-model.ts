import { MONTHS } from '../domain/day.ts';
import { type DayLevel, dayQuestion } from './day-levels.ts';
import type { FitOptions, LatentFit } from './engine/latent-model.ts';
import { type FeatureReturn, featureQuestion } from './feature-returns.ts';
import { fitRatings } from './fit-ratings.ts';
import { type PegMonthReturn, pegMonthQuestion, pegQuestion } from './peg-returns.ts';
import type { RatedVenue } from './rated-venue.ts';
import { type AskedTerms, type RatingModel, ratingModel, TERM } from './rating-model.ts';
import type { BagId, BagTables, ModelSummary, PegReturn } from './ratings.ts';
import { answers } from './returns.ts';
import { MONTH_SEASON } from './season.ts';
import { type ModelSession, type SessionChoice, sessionsInModel } from './sessions-in-model.ts';

/** The monthly model of one bag, fitted, with the sessions it was fitted to. */
export interface BagModel {
  readonly bag: BagId;
  readonly sessions: readonly ModelSession[];
  /** A bag that weighed nothing is known to be below this. */
  readonly noneBelowGrams: number;
  readonly model: RatingModel;
  readonly fit: LatentFit;
}

/** Fits the monthly model of the total bag or of a bag part. */
export function fitBag(
  venue: RatedVenue,
  bag: BagId,
  choice: SessionChoice & { readonly asked?: AskedTerms } = {},
  options: FitOptions = {},
): BagModel {
  const { sessions, noneBelowGrams } = sessionsInModel(venue, bag, choice);
  // Where nobody weighed, "at most this" of everyone compares no peg with another.
  const telling = sessions.some(({ isCensored }) => !isCensored) ? sessions : [];
  const model = ratingModel(venue, telling, MONTH_SEASON, choice.asked);
  return { bag, sessions, noneBelowGrams, model, fit: fitRatings(model.latent, options) };
}

/** A bag's model with all that the tables ask of it, on the log scale. */
export interface RatedBag {
  readonly fitted: BagModel;
  readonly features: readonly FeatureReturn[];
  readonly pegs: readonly PegReturn[];
  readonly pegMonths: readonly PegMonthReturn[];
  readonly days: readonly DayLevel[];
}

/** Asks of a bag's fit all that the tables rest on. */
export function rateBag(venue: RatedVenue, fitted: BagModel): RatedBag {
  const { sessions, model } = fitted;
  const [features, pegs, pegMonths, days] = answers(fitted, [
    featureQuestion(venue, sessions, model),
    pegQuestion(venue, model),
    pegMonthQuestion(venue, sessions, model),
    dayQuestion(venue, sessions, model),
  ] as const);
  return { fitted, features, pegs, pegMonths, days };
}

/** The tables of one bag as they are published. */
export function bagTables({ fitted, features, pegs, pegMonths }: RatedBag): BagTables {
  return {
    bag: fitted.bag,
    featureMonths: features.map(({ feature, position, logReturn, sd, low80, high80, sessions, evidence }) => ({
      feature,
      month: MONTHS[position]!,
      logReturn,
      sd,
      low80,
      high80,
      sessions,
      evidence,
    })),
    pegs,
    pegMonths: pegMonths.map(({ water, peg, month, logReturn, low80, high80, sessions, evidence }) => ({
      water,
      peg,
      month,
      return: Math.exp(logReturn),
      low80,
      high80,
      sessions,
      evidence,
    })),
    model: modelSummary(fitted),
  };
}

function modelSummary(fitted: BagModel): ModelSummary {
  const { sessions, fit } = fitted;
  // A term the venue has nothing for (no known angler, no feature) has no spread.
  const sd = (term: string) => fit.sd[term] ?? 0;
  return {
    sd: {
      event: Math.hypot(sd(TERM.event), seasonalSpread(fitted)),
      angler: sd(TERM.angler),
      peg: sd(TERM.peg),
      feature: sd(TERM.feature),
      featureMonth: sd(TERM.season),
      residual: fit.residualSd,
    },
    logMarginal: fit.logMarginal,
    sessions: sessions.length,
    censored: sessions.filter(({ isCensored }) => isCensored).length,
  };
}

/** How far the days of the log lie apart by their water and its season alone: a standard deviation over its events. */
function seasonalSpread({ sessions, model, fit }: BagModel): number {
  const effect = (term: string, column: number) => (fit.sd[term] === undefined ? 0 : fit.effects(term)[column]!);
  const events = [...new Map(sessions.map(({ event }) => [event.id, event])).values()];
  if (events.length === 0) return 0;
  const days = events.map((event) => {
    const water = model.waterColumns.get(event.water)!;
    const season = water * model.season.positions + model.season.positionOf(event)!;
    return effect(TERM.water, water) + effect(TERM.waterSeason, season);
  });
  const mean = days.reduce((sum, day) => sum + day, 0) / days.length;
  return Math.sqrt(days.reduce((sum, day) => sum + (day - mean) ** 2, 0) / days.length);
}
