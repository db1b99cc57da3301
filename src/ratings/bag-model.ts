import { MONTHS, type Month } from '../domain/day.ts';
import { type DayLevel, dayQuestion } from './day-levels.ts';
import { type DaySpread, daySpread } from './day-spread.ts';
import type { FitOptions, LatentFit } from './engine/latent-model.ts';
import { type FeatureWorth, featureQuestion } from './feature-worth.ts';
import { fitRatings, PRESENCE_PRIORS } from './fit-ratings.ts';
import { type PegMonthWorth, type PegYearWorth, pegMonthQuestion, pegQuestion } from './peg-worth.ts';
import type { RatedVenue } from './rated-venue.ts';
import { type AskedTerms, type RatingModel, ratingModel, TERM, venueWaveAt } from './rating-model.ts';
import type { BagId, BagTables, ModelSummary, WaterLevel } from './ratings.ts';
import { type ModelSession, type SessionChoice, sessionsInModel, tellingSessions } from './sessions-in-model.ts';
import { MONTH_SEASON, type Season } from './temperature-season.ts';
import { correlationOfSides, togetherWorth } from './two-part-bag.ts';
import { levelQuestion } from './water-levels.ts';
import { answers } from './worth.ts';

/** The monthly model of one bag, fitted, with the sessions it was fitted to. */
export interface BagModel {
  readonly bag: BagId;
  readonly sessions: readonly ModelSession[];
  /** A bag that weighed nothing is known to be below this. */
  readonly noneBelowGrams: number;
  readonly model: RatingModel;
  readonly fit: LatentFit;
  /** Whether there is any, where the part is often missing; then the model above is of what it weighs where there is some. */
  readonly presence: PresenceModel | null;
}

/** A probit model of whether a bag holds any of a part. */
export interface PresenceModel {
  readonly sessions: readonly ModelSession[];
  readonly model: RatingModel;
  readonly fit: LatentFit;
}

/** Fits the monthly model of the total bag or of a bag part. */
export function fitBag(
  venue: RatedVenue,
  bag: BagId,
  choice: SessionChoice & { readonly asked?: AskedTerms; readonly season?: Season } = {},
  options: FitOptions = {},
): BagModel {
  const { sessions, noneBelowGrams } = sessionsInModel(venue, bag, choice);
  const telling = tellingSessions(sessions);
  const presence = bag === 'total' ? null : fitPresence(venue, telling, choice, options.start);
  const rows = presence === null ? telling : telling.filter(({ isCensored }) => !isCensored);
  const model = ratingModel(venue, rows, choice.season ?? MONTH_SEASON, choice.asked);
  const fit = fitRatings(model.latent, options);
  return { bag, sessions: presence === null ? sessions : rows, noneBelowGrams, model, fit, presence };
}

/** Fewer bags than this without the part, or with it, tell nothing of its presence. */
const MIN_PRESENCE = 20;

/** Whether a part is missing often enough, and there often enough, that its presence is told apart from its weight. */
export function isToldInTwo(sessions: readonly ModelSession[]): boolean {
  const weighed = weighedSessions(sessions);
  const missing = weighed.filter(({ isCensored }) => isCensored).length;
  return Math.min(missing, weighed.length - missing) >= MIN_PRESENCE;
}

/** Of bags that were not weighed nothing is known of their parts. */
function weighedSessions(sessions: readonly ModelSession[]): ModelSession[] {
  return sessions.filter(
    ({ session, isDnw }) => isDnw !== true && (session.status === 'weighed' || session.status === 'blank'),
  );
}

/**
 * The model of whether there is any, from the bags that were weighed: bounds at zero, the scatter held at 1, since a yes or
 * no has no scale of its own. Of bags that were not weighed nothing is known of their parts. Null where the part is hardly
 * ever missing, or hardly ever there.
 */
function fitPresence(
  venue: RatedVenue,
  sessions: readonly ModelSession[],
  { asked, season = MONTH_SEASON }: { readonly asked?: AskedTerms; readonly season?: Season },
  start: FitOptions['start'],
): PresenceModel | null {
  if (!isToldInTwo(sessions)) return null;
  const weighed = weighedSessions(sessions);
  const model = ratingModel(venue, weighed, season, asked);
  const observations = {
    lower: Float64Array.from(weighed, ({ isCensored }) => (isCensored ? Number.NEGATIVE_INFINITY : 0)),
    upper: Float64Array.from(weighed, ({ isCensored }) => (isCensored ? 0 : Number.POSITIVE_INFINITY)),
  };
  const fit = fitRatings(
    { ...model.latent, observations },
    {
      weakPriors: PRESENCE_PRIORS,
      hold: { residualSd: 1 },
      ...(start === undefined ? {} : { start: { sd: start.sd, residualSd: 1 } }),
    },
  );
  return { sessions: weighed, model, fit };
}

/** All that the tables ask of a bag's model, on the log scale. Plain data, so that another thread may have worked it out. */
export interface ToldBag {
  readonly bag: BagId;
  readonly features: readonly FeatureWorth[];
  readonly pegs: readonly PegYearWorth[];
  readonly pegMonths: readonly PegMonthWorth[];
  readonly days: readonly DayLevel[];
  readonly levels: readonly WaterLevel[];
  readonly outlook: Outlook;
  /** Where the part is often missing: its two sides apart, which a bag yet to come is made of. */
  readonly presence: {
    readonly weights: readonly PegMonthWorth[];
    readonly pegMonths: readonly PegMonthWorth[];
    readonly days: readonly DayLevel[];
    readonly daySpread: DaySpread;
  } | null;
  readonly summary: ModelSummary;
}

/** What lies between a worth and a bag yet to come. */
export interface Outlook {
  /** A bag that weighs nothing is known to be below this. */
  readonly noneBelowGrams: number;
  readonly daySpread: DaySpread;
  /** Of anglers and of what is left, on the log scale. */
  readonly anglerSd: number;
  readonly residualSd: number;
  /** Of days about their level. */
  readonly eventSd: number;
}

/** A bag's model with all that the tables ask of it. */
export interface RatedBag extends ToldBag {
  readonly fitted: BagModel;
}

/** Asks of a bag's fit all that the tables rest on. */
export function rateBag(venue: RatedVenue, fitted: BagModel): RatedBag {
  const told = toldBy(venue, fitted);
  const { bag, fit, presence, noneBelowGrams } = fitted;
  const outlook: Outlook = {
    noneBelowGrams,
    daySpread: daySpread(fit),
    anglerSd: fit.sd[TERM.angler] ?? 0,
    residualSd: fit.residualSd,
    eventSd: fit.sd[TERM.event] ?? 0,
  };
  const rated = { bag, fitted, outlook, summary: modelSummary(fitted) };
  if (presence === null) return { ...rated, ...told, presence: null };
  const there = toldBy(venue, presence);
  const spread = Math.hypot(1, presence.fit.sd[TERM.event] ?? 0, presence.fit.sd[TERM.angler] ?? 0);
  const pars = new Map(there.days.map((day) => [`${day.water} ${day.month}`, day]));
  const parOver = (keys: readonly string[]) => {
    const meanOf = (of: 'mean' | 'sd') => keys.reduce((sum, key) => sum + pars.get(key)![of], 0) / keys.length;
    return { mean: meanOf('mean'), sd: meanOf('sd'), spread };
  };
  const correlation = correlationOfSides(told.pegMonths, there.pegMonths);
  const parOf = (water: string, month: Month) => parOver([`${water} ${month}`]);
  return {
    ...rated,
    features: told.features.map((row, i) => ({
      ...row,
      ...togetherWorth(
        row,
        there.features[i]!,
        parOver(venue.waters.map(({ id }) => `${id} ${MONTHS[row.position]}`)),
        correlation,
      ),
    })),
    pegs: told.pegs.map((row, i) => {
      const par = parOver(MONTHS.map((month) => `${row.water} ${month}`));
      return { ...row, ...togetherWorth(row, there.pegs[i]!, par, correlation) };
    }),
    pegMonths: told.pegMonths.map((row, i) => ({
      ...row,
      ...togetherWorth(row, there.pegMonths[i]!, parOf(row.water, row.month), correlation),
    })),
    days: told.days,
    levels: told.levels,
    presence: {
      weights: told.pegMonths,
      pegMonths: there.pegMonths,
      days: there.days,
      daySpread: daySpread(presence.fit),
    },
  };
}

function toldBy(venue: RatedVenue, fitted: Pick<BagModel, 'sessions' | 'model' | 'fit'>) {
  const { sessions, model } = fitted;
  const [features, pegs, pegMonths, days, levels] = answers(fitted, [
    featureQuestion(venue, sessions, model),
    pegQuestion(venue, model),
    pegMonthQuestion(venue, sessions, model),
    dayQuestion(venue, sessions, model),
    levelQuestion(sessions, model),
  ] as const);
  return { features, pegs, pegMonths, days, levels };
}

/** The tables of one bag as they are published. */
export function bagTables({ bag, features, pegs, pegMonths, summary }: ToldBag): BagTables {
  return {
    bag,
    featureMonths: features.map(({ feature, position, logWorth, sd, low80, high80, sessions, evidence }) => ({
      feature,
      month: MONTHS[position]!,
      logWorth,
      sd,
      low80,
      high80,
      sessions,
      evidence,
    })),
    pegs: pegs.map(({ water, peg, logWorth, sd }) => ({ water, peg, logWorth, sd })),
    pegMonths: pegMonths.map(({ water, peg, month, logWorth, low80, high80, sessions, evidence }) => ({
      water,
      peg,
      month,
      worth: Math.exp(logWorth),
      low80,
      high80,
      sessions,
      evidence,
    })),
    model: summary,
  };
}

function modelSummary(fitted: BagModel): ModelSummary {
  const { fit, presence } = fitted;
  const sessions = presence?.sessions ?? fitted.sessions;
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
    const position = model.season.positionOf(event)!;
    const season = effect(TERM.waterSeason, water * model.season.positions + position);
    const wave = venueWaveAt(model.season, position);
    const flat = effect(TERM.water, water) + season;
    return wave.reduce((sum, { term, column, weight }) => sum + weight * effect(term, column), flat);
  });
  const mean = days.reduce((sum, day) => sum + day, 0) / days.length;
  return Math.sqrt(days.reduce((sum, day) => sum + (day - mean) ** 2, 0) / days.length);
}
