import { pegKey } from '../domain/peg.ts';
import { groundOn } from '../domain/stand.ts';
import { scoreOfSpread } from './asks-for-term.ts';
import type { BagModel } from './bag-model.ts';
import type { DnwLesson } from './dnw-mechanism.ts';
import type { LatentFit, LatentModel } from './engine/latent-model.ts';
import { fitRatings, startFrom } from './fit-ratings.ts';
import type { FitStart } from './fit-report.ts';
import { dnwBounded, learnDnw } from './learn-dnw.ts';
import { quantile } from './quantile.ts';
import type { RatedVenue } from './rated-venue.ts';
import { type AskedTerms, type RatingModel, ratingModel, TERM } from './rating-model.ts';
import { type ModelSession, sessionsInModel } from './sessions-in-model.ts';
import { standsInLog } from './stands-in-log.ts';
import { MONTH_SEASON } from './temperature-season.ts';

/** What a first, plain fit of the total bag shows: who does not weigh, and which further terms the log asks for. */
export interface FirstLook {
  readonly lesson: DnwLesson;
  /** The total bag with nothing said of its DNWs; null where nobody failed to weigh. */
  readonly without: BagModel | null;
  /** Fits the same with them, in the same way, so that what differs is what the DNWs do; null with the other. */
  readonly with: () => BagModel | null;
  readonly asked: AskedTerms;
  /** How far the log asks for each of the terms, in standard deviations; null where it has one year only. */
  readonly scores: { readonly pegYears: number; readonly waterYears: number } | null;
  /** Where the fits that follow may begin; null where the log says nothing. */
  readonly start: FitStart | null;
}

/** Of two years one is better than the other, and nobody can say whether that was its weather or a walk that goes on. */
const MIN_WALK_YEARS = 3;

/** A term is taken in where the log asks for it this strongly: by chance one log in twenty does. */
const ASKED_ABOVE = 1.645;

/** Fits the total bag plainly, with nothing said of its DNWs, and learns from that fit what the model should hold. */
export function firstLook(venue: RatedVenue): FirstLook {
  const { sessions, noneBelowGrams } = sessionsInModel(venue, 'total');
  if (sessions.every(({ isCensored }) => isCensored)) {
    const lesson = { mechanism: null, why: 'none-weighed' } as const;
    return { lesson, without: null, with: () => null, asked: {}, scores: null, start: null };
  }
  const model = ratingModel(venue, sessions, MONTH_SEASON);
  const dnwRows = sessions.flatMap(({ isDnw }, row) => (isDnw === true ? [row] : []));
  const latent = dnwBounded(
    model.latent,
    dnwRows.map((row) => ({ row, middle: 0 })),
    null,
  );
  const fit = fitRatings(latent, { variances: 'mode', tolerance: NEAR });
  const learned = dnwLesson(sessions, dnwRows, latent, fit);
  const scores = askedScores(venue, sessions, model, learned.latent, learned.fit);
  const plain = { bag: 'total', noneBelowGrams, model, presence: null } as const;
  const isAllWeighed = dnwRows.length === 0;
  return {
    lesson: learned.lesson,
    without: isAllWeighed ? null : { ...plain, sessions: sessions.filter(({ isDnw }) => isDnw !== true), fit },
    with: () => (isAllWeighed ? null : { ...plain, sessions, fit: fitWithDnws(model.latent, learned) }),
    asked:
      scores === null
        ? {}
        : {
            pegYears: scores.pegYears > ASKED_ABOVE,
            waterYears: model.years.count >= MIN_WALK_YEARS && scores.waterYears > ASKED_ABOVE,
          },
    scores,
    start: startFrom(learned.fit),
  };
}

/** The first fit only shows the way: a twentieth of the variances' own doubt is near enough. */
const NEAR = 0.05;

/** As the first fit, but with the DNWs: below what the log taught of them, else below the bound their event gives them. */
function fitWithDnws(stated: LatentModel, { lesson, latent, fit }: ReturnType<typeof dnwLesson>): LatentFit {
  const model = lesson.mechanism === null ? stated : latent;
  return fitRatings(model, { variances: 'mode', tolerance: NEAR, start: startFrom(fit) });
}

function dnwLesson(
  sessions: readonly ModelSession[],
  dnwRows: readonly number[],
  latent: LatentModel,
  fit: LatentFit,
): { readonly lesson: DnwLesson; readonly fit: LatentFit; readonly latent: LatentModel } {
  if (dnwRows.length === 0) return { lesson: { mechanism: null, why: 'all-weighed' }, fit, latent };
  const middles = eventMiddles(sessions);
  return learnDnw(
    {
      latent,
      weighed: sessions.flatMap(({ session, event, logKg, isCensored }) =>
        session.status === 'weighed' && !isCensored && middles.has(event.id) ? [logKg - middles.get(event.id)!] : [],
      ),
      dnw: dnwRows.flatMap((row) => {
        const middle = middles.get(sessions[row]!.event.id);
        return middle === undefined ? [] : [{ row, middle }];
      }),
    },
    fit,
  );
}

/** The log middle of the weighed bags of every event that lists all. */
function eventMiddles(sessions: readonly ModelSession[]): ReadonlyMap<string, number> {
  const weighed = sessions.filter(({ session, event }) => session.status === 'weighed' && event.listing === 'full');
  return new Map(
    [...Map.groupBy(weighed, ({ event }) => event.id)].map(([id, of]) => [
      id,
      Math.log(
        quantile(
          of.map(({ session }) => session.weightGrams ?? 0),
          0.5,
        ) / 1000,
      ),
    ]),
  );
}

/** Of a normal spread, told by its median deviation, one day in 16,000 lies further out. */
const UNUSUAL_SDS = 4;
/** A median deviation of 1 is that of a normal spread of this. */
const SD_OF_MEDIAN_DEVIATION = 1.4826;

/**
 * The events whose day was not out of all proportion. A week of skim ice on which nothing feeds says nothing of its year: in one
 * simulated venue seven such days asked for a walk over the years that made the next year's bags a sixth worse forecast.
 */
function usualEvents(sessions: readonly ModelSession[], fit: LatentFit): ReadonlySet<string> {
  const ids = [...new Set(sessions.map(({ event }) => event.id))];
  const effects = fit.effects(TERM.event);
  const middle = quantile([...effects], 0.5);
  const deviations = Array.from(effects, (effect) => Math.abs(effect - middle));
  const limit = UNUSUAL_SDS * SD_OF_MEDIAN_DEVIATION * quantile(deviations, 0.5);
  return new Set(ids.filter((_, column) => deviations[column]! <= limit));
}

/** What fits go by that follow a first look. Plain data, so that it can be kept. */
export interface Ground extends Pick<FirstLook, 'lesson' | 'asked' | 'start'> {}

export function groundOf({ lesson, asked, start }: FirstLook): Ground {
  return { lesson, asked, start };
}

function askedScores(
  venue: RatedVenue,
  sessions: readonly ModelSession[],
  { years, pegColumns, waterColumns }: RatingModel,
  latent: LatentModel,
  fit: LatentFit,
): FirstLook['scores'] {
  if (years.count < 2) return null;
  const yearOf = ({ event }: ModelSession) => years.positionOf(event.day);
  const stands = standsInLog(venue);
  const pegYears = sessions.map((each) => {
    const stand = stands.get(pegKey(each.session.water, each.session.peg))!;
    return pegColumns.get(groundOn(stand, each.event.day))! * years.count + yearOf(each);
  });
  const usual = usualEvents(sessions, fit);
  const waterYears = sessions.map((each) =>
    usual.has(each.event.id) ? waterColumns.get(each.event.water)! * years.count + yearOf(each) : -1,
  );
  return {
    pegYears: scoreOfSpread(latent, fit, pegYears),
    waterYears: scoreOfSpread(latent, fit, waterYears),
  };
}
