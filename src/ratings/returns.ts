import { MONTHS, type Month, monthOf } from '../domain/day.ts';
import { type PegKey, pegKey } from '../domain/peg.ts';
import type { LatentFit, LinearCombination } from './engine/latent-model.ts';
import { evidenceOf } from './evidence.ts';
import { interval80 } from './interval.ts';
import { priorSd, unitVariance } from './prior-sd.ts';
import type { RatedVenue } from './rated-venue.ts';
import { type RatingModel, TERM } from './rating-model.ts';
import type { Evidence, PegReturn } from './ratings.ts';
import { returnCombinations } from './return-combinations.ts';
import type { ModelSession } from './sessions-in-model.ts';

/** A return on the log scale, with what the guide says of its doubt. */
export interface ReturnWithDoubt {
  readonly logReturn: number;
  readonly sd: number;
  readonly low80: number;
  readonly high80: number;
  readonly sessions: number;
  readonly evidence: Evidence;
}

/** A fitted model of one bag. */
export interface FittedModel {
  readonly model: RatingModel;
  readonly fit: LatentFit;
}

/** Posterior returns of combinations, in the order asked; `sessions` counts what stands behind each. */
export function returnsOf(
  { model, fit }: FittedModel,
  asked: readonly { readonly combination: LinearCombination; readonly sessions: number }[],
): ReturnWithDoubt[] {
  const { mean, sd } = fit.posterior(asked.map(({ combination }) => combination));
  return asked.map(({ combination, sessions }, i) => ({
    logReturn: mean[i]!,
    sd: sd[i]!,
    ...interval80(mean[i]!, sd[i]!),
    sessions,
    // What no session was seen of is thin, however well its neighbours are known.
    evidence: sessions === 0 ? 'thin' : evidenceOf(sd[i]!, priorSd(combination, model.latent, fit)),
  }));
}

/** A feature's return at a position of the season, on the log scale. */
export interface FeatureReturn extends ReturnWithDoubt {
  readonly feature: string;
  readonly position: number;
}

/**
 * Return of every feature at every position of the season, in the venue's order of features. A feature that is part of
 * par wherever it stands has no return to tell: it is stated at par, as wide as the prior.
 */
export function featureReturns(
  venue: RatedVenue,
  sessions: readonly ModelSession[],
  fitted: FittedModel,
): FeatureReturn[] {
  const { model, fit } = fitted;
  const combinations = returnCombinations(venue, model);
  const counts = featureCounts(venue, sessions, model);
  const places = model.shares.features.flatMap((feature) =>
    Array.from({ length: model.season.positions }, (_, position) => ({
      feature,
      position,
      sessions: counts.get(`${feature} ${position}`) ?? 0,
    })),
  );
  const told = places.filter(({ feature }) => model.featureColumns.has(feature));
  const returns = returnsOf(
    fitted,
    told.map(({ feature, position, sessions: count }) => ({
      combination: combinations.ofFeature(feature, position),
      sessions: count,
    })),
  );
  const found = new Map(told.map((place, i) => [place, returns[i]!]));
  return places.map((place) => ({ ...place, ...(found.get(place) ?? untold(place, model, fit)) }));
}

function untold(
  { position, sessions }: { readonly position: number; readonly sessions: number },
  model: RatingModel,
  fit: LatentFit,
): ReturnWithDoubt {
  const level = fit.sd[TERM.feature] ?? NOTHING_KNOWN;
  const season = (fit.sd[TERM.season] ?? NOTHING_KNOWN) * Math.sqrt(unitVariance(model.season.prior, position));
  const sd = Math.hypot(level, season);
  return { logReturn: 0, sd, ...interval80(0, sd), sessions, evidence: 'thin' };
}

/** Spread of a feature's effect where the venue has none that could tell: a factor of 1.5 either way. */
const NOTHING_KNOWN = 0.4;

function featureCounts(
  venue: RatedVenue,
  sessions: readonly ModelSession[],
  { season }: RatingModel,
): ReadonlyMap<string, number> {
  const features = new Map(venue.pegs.map((peg) => [pegKey(peg.water, peg.peg), peg.features]));
  const counts = new Map<string, number>();
  for (const { session, event } of sessions) {
    const position = season.positionOf(event);
    for (const feature of new Set(features.get(pegKey(session.water, session.peg)))) {
      const key = `${feature} ${position}`;
      counts.set(key, (counts.get(key) ?? 0) + 1);
    }
  }
  return counts;
}

/** Return of every peg over the year. */
export function pegReturns(venue: RatedVenue, fitted: FittedModel): PegReturn[] {
  const { ofPeg } = returnCombinations(venue, fitted.model);
  const { mean, sd } = fitted.fit.posterior(venue.pegs.map((peg) => ofPeg(peg, null)));
  return venue.pegs.map(({ water, peg }, i) => ({ water, peg, logReturn: mean[i]!, sd: sd[i]! }));
}

/** A peg's return in a month, on the log scale. */
export interface PegMonthReturn extends ReturnWithDoubt {
  readonly water: string;
  readonly peg: string;
  readonly month: Month;
}

/** A peg fished less often than this in a month is known there by its features and by its other months: at most fair. */
const LEAST_FOR_SOLID = 3;

/** Return of every peg in every month. A peg never drawn, and a month in which its water was never fished, is thin. */
export function pegMonthReturns(
  venue: RatedVenue,
  sessions: readonly ModelSession[],
  { model, fit }: FittedModel,
): PegMonthReturn[] {
  const { ofPeg } = returnCombinations(venue, model);
  const seen = sessionCounts(sessions);
  const places = venue.pegs.flatMap((peg) =>
    MONTHS.map((month) => ({ water: peg.water, peg: peg.peg, month, combination: ofPeg(peg, month - 1) })),
  );
  const { mean, sd } = fit.posterior(places.map(({ combination }) => combination));
  return places.map(({ water, peg, month, combination }, i) => {
    const key = pegKey(water, peg);
    const count = seen.pegMonths.get(`${key} ${month}`) ?? 0;
    const evidence = evidenceOf(sd[i]!, priorSd(combination, model.latent, fit));
    const isUnseen = !seen.pegs.has(key) || !seen.waterMonths.has(`${water} ${month}`);
    return {
      water,
      peg,
      month,
      logReturn: mean[i]!,
      sd: sd[i]!,
      ...interval80(mean[i]!, sd[i]!),
      sessions: count,
      evidence: isUnseen ? 'thin' : count < LEAST_FOR_SOLID && evidence === 'solid' ? 'fair' : evidence,
    };
  });
}

function sessionCounts(sessions: readonly ModelSession[]) {
  const pegs = new Set<PegKey>();
  const waterMonths = new Set<string>();
  const pegMonthCounts = new Map<string, number>();
  for (const { session, event } of sessions) {
    const key = pegKey(session.water, session.peg);
    const month = monthOf(event.day);
    pegs.add(key);
    waterMonths.add(`${session.water} ${month}`);
    pegMonthCounts.set(`${key} ${month}`, (pegMonthCounts.get(`${key} ${month}`) ?? 0) + 1);
  }
  return { pegs, waterMonths, pegMonths: pegMonthCounts };
}
