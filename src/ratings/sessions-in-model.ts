import { blankMeaning, type FishingEvent, matchOf, type Session } from '../domain/session.ts';
import type { DnwMechanism } from './dnw-mechanism.ts';
import { partGrams } from './logged-part.ts';
import { quantile } from './quantile.ts';
import type { RatedVenue } from './rated-venue.ts';
import { type BagId, LEFT_OUT_REASONS, type LeftOutReason, type RatingsLeftOut } from './ratings.ts';

/** One session as the model sees it: an observed log weight, or an upper bound of one. */
export interface ModelSession {
  readonly event: FishingEvent;
  readonly session: Session;
  /** Natural log of kilograms: of the bag, or of the bound where censored. */
  readonly logKg: number;
  /** True where only "at most this" is known. */
  readonly isCensored: boolean;
  /** True where the angler did not weigh, logged so or as a nought that stands for it. */
  readonly isDnw?: boolean;
  /** Standard deviation of a bound that is itself known only about so well, on the log scale. */
  readonly blur?: number;
}

/** Which sessions count for a bag, in an order that the log's own order does not change, and why the others do not. */
export interface SessionsInModel {
  readonly sessions: readonly ModelSession[];
  readonly leftOut: readonly RatingsLeftOut[];
  /** A bag that weighed nothing is known to be below this. */
  readonly noneBelowGrams: number;
}

/** What a caller may ask for beside the venue's own rules. */
export interface SessionChoice {
  /** Leaves every DNW out, to show what the assumption about them does. */
  readonly withoutDnw?: boolean;
  /** Who does not weigh, as the log taught; without it a DNW lies below the lower quarter of its event's bags. */
  readonly dnw?: DnwMechanism | undefined;
}

type Verdict = Pick<ModelSession, 'logKg' | 'isCensored' | 'isDnw' | 'blur'> | { readonly why: LeftOutReason };

/** Bounds that an event's own bags set for sessions whose weight is not known; null where nobody weighed. */
interface EventBounds {
  readonly dnwGrams: number | null;
  /** The middle of the weighed bags where all are listed, which a learned DNW is told from. */
  readonly middleGrams: number | null;
  readonly unlistedGrams: number | null;
  readonly isDrawKnown: boolean;
  /** Some session of the event tells the weight of the bag part asked for. */
  readonly isPartLogged: boolean;
}

/**
 * Sorts the log's sessions into those the model of a bag takes and those left out, each counted under its reason.
 * A weighed bag is observed; a blank lies below the least bag that the log holds, or counts as a DNW where that is what the
 * club's noughts stand for, and a part that weighed nothing lies below the least weight of it; a part has no weights before the
 * day it was first weighed apart; a DNW lies below a blurred bound about the middle of the event's weighed bags, as
 * the log taught, or where it taught nothing below their lower quarter (an assumption), and below all of them where only
 * the places are listed; an unlisted session of a frame-only event lies below the lowest listed bag. A part can weigh no more than its bag, so the same bounds hold for parts.
 */
export function sessionsInModel(venue: RatedVenue, bag: BagId, choice: SessionChoice = {}): SessionsInModel {
  const byEvent = Map.groupBy(venue.sessions, (session) => session.event);
  const byMatch = Map.groupBy(venue.events, matchOf);
  const sessions: ModelSession[] = [];
  const counts = new Map<LeftOutReason, number>();
  const noneBelowGrams = leastGrams(venue, bag);
  const rules = { ...venue.settings, bag, noneBelowGrams, withoutDnw: choice.withoutDnw === true, dnw: choice.dnw };
  for (const event of [...venue.events].sort(byDayThenId)) {
    const ofEvent = [...(byEvent.get(event.id) ?? [])].sort(byPegThenAngler);
    const ofMatch = byMatch.get(matchOf(event))!.flatMap(({ id }) => byEvent.get(id) ?? []);
    const bounds = boundsOf(event, ofEvent, ofMatch, venue, bag);
    for (const session of ofEvent) {
      const verdict = judge(session, event, bounds, rules);
      if ('why' in verdict) counts.set(verdict.why, (counts.get(verdict.why) ?? 0) + 1);
      else sessions.push({ event, session, ...verdict });
    }
  }
  const leftOut = LEFT_OUT_REASONS.filter((why) => counts.has(why)).map((why) => ({ why, sessions: counts.get(why)! }));
  return { sessions, leftOut, noneBelowGrams };
}

/**
 * What nothing is below: the least ever weighed, of a part one fish, and never less than the scale's division. The division
 * itself, where a single fish weighs a pound, would stretch the model over a gap in which no bag can lie: on simulated logs
 * the chance of no carp then came out a third too low, and seven noughts in 178 bags doubled the scatter.
 */
function leastGrams({ sessions, settings }: RatedVenue, bag: BagId): number {
  const division = settings.ratingRules.scaleDivisionGrams;
  let least = Number.POSITIVE_INFINITY;
  for (const { parts, weightGrams = 0 } of sessions) {
    const grams = bag === 'total' ? weightGrams : (parts[bag]?.weightGrams ?? 0);
    if (grams > 0 && grams < least) least = grams;
  }
  return Number.isFinite(least) ? Math.max(division, least) : division;
}

/** @param ofMatch Sessions of all waters of the match: its list of places is one. */
function boundsOf(
  event: FishingEvent,
  sessions: readonly Session[],
  ofMatch: readonly Session[],
  venue: RatedVenue,
  bag: BagId,
): EventBounds {
  const weighed = sessions.filter((session) => session.status === 'weighed');
  const grams = weighed.map((session) => session.weightGrams ?? 0);
  const lowest = grams.length === 0 ? null : Math.min(...grams);
  const listedGrams = ofMatch.flatMap(({ status, weightGrams = 0 }) => (status === 'weighed' ? [weightGrams] : []));
  const lowestListed = listedGrams.length === 0 ? null : Math.min(...listedGrams);
  const listed = sessions.filter(({ status }) => status !== 'unlisted' && status !== 'absent').length;
  return {
    dnwGrams: event.listing === 'frame' ? lowestListed : lowest === null ? null : quantile(grams, 0.25),
    middleGrams: lowest === null || event.listing === 'frame' ? null : quantile(grams, 0.5),
    unlistedGrams: lowestListed,
    isDrawKnown:
      event.listing === 'full' ||
      sessions.some(({ status }) => status === 'unlisted') ||
      (event.fished !== undefined && listed >= event.fished),
    isPartLogged:
      bag === 'total' ||
      (event.day >= (venue.settings.bagParts.find(({ id }) => id === bag)?.since ?? '') &&
        weighed.some((session) => partGrams(session, bag, venue.settings.bagParts) !== undefined)),
  };
}

interface JudgingRules extends Pick<RatedVenue['settings'], 'bagParts' | 'ratingRules'> {
  readonly bag: BagId;
  readonly noneBelowGrams: number;
  readonly withoutDnw: boolean;
  readonly dnw: DnwMechanism | undefined;
}

function judge(
  session: Session,
  event: FishingEvent,
  bounds: EventBounds,
  { bag, bagParts, noneBelowGrams, ratingRules, withoutDnw, dnw }: JudgingRules,
): Verdict {
  if (event.kind !== 'match' && !ratingRules.countChosenPegs) return { why: 'chosen' };
  if (!bounds.isPartLogged) return { why: 'part-unknown' };
  if (!bounds.isDrawKnown) return { why: 'draw-unknown' };
  switch (statusOf(session, event, ratingRules)) {
    case 'absent':
      return { why: 'absent' };
    case 'disqualified':
      return { why: 'disqualified' };
    case 'blank':
      return below(noneBelowGrams);
    case 'dnw':
      if (withoutDnw) return { why: 'dnw' };
      if (dnw !== undefined && bounds.middleGrams !== null) {
        return {
          logKg: Math.log(bounds.middleGrams / 1000) + dnw.shift,
          isCensored: true,
          isDnw: true,
          blur: dnw.blur,
        };
      }
      return bounds.dnwGrams === null ? { why: 'no-bound' } : { ...below(bounds.dnwGrams), isDnw: true };
    case 'unlisted':
      if (event.listing === 'full') return { why: 'unlisted-in-full' };
      return bounds.unlistedGrams === null ? { why: 'no-bound' } : below(bounds.unlistedGrams);
    case 'weighed': {
      const grams = bag === 'total' ? session.weightGrams : partGrams(session, bag, bagParts);
      if (grams === undefined) return { why: 'part-unknown' };
      return grams > 0 ? { logKg: Math.log(grams / 1000), isCensored: false } : below(noneBelowGrams);
    }
  }
}

/** A nought on a sheet stands for what the club says it does. */
function statusOf(
  session: Session,
  event: FishingEvent,
  rules: RatedVenue['settings']['ratingRules'],
): Session['status'] {
  return session.status === 'blank' && blankMeaning(event, rules) === 'dnw' ? 'dnw' : session.status;
}

function below(grams: number): Pick<ModelSession, 'logKg' | 'isCensored'> {
  return { logKg: Math.log(grams / 1000), isCensored: true };
}

function byDayThenId(a: FishingEvent, b: FishingEvent): number {
  return compare(a.day, b.day) || compare(a.id, b.id);
}

function byPegThenAngler(a: Session, b: Session): number {
  return compare(a.peg, b.peg) || compare(a.angler ?? '', b.angler ?? '');
}

function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

/** All of them, or none where nobody weighed: "at most this" of everyone compares no peg with another. */
export function tellingSessions(sessions: readonly ModelSession[]): readonly ModelSession[] {
  return sessions.some(({ isCensored }) => !isCensored) ? sessions : [];
}
