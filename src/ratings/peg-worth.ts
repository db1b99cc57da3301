import { MONTHS, type Month, monthOf } from '../domain/day.ts';
import { type PegKey, pegKey } from '../domain/peg.ts';
import { groundOn } from '../domain/stand.ts';
import type { RatedVenue } from './rated-venue.ts';
import type { RatingModel } from './rating-model.ts';
import type { Evidence } from './ratings.ts';
import type { ModelSession } from './sessions-in-model.ts';
import type { Question, WorthEstimate } from './worth.ts';
import { worthCombinations } from './worth-combinations.ts';

/** A peg's worth over the year. */
export interface PegYearWorth extends WorthEstimate {
  readonly water: string;
  readonly peg: string;
}

/** Asks for the worth of every peg over the year. */
export function pegQuestion(venue: RatedVenue, model: RatingModel): Question<PegYearWorth> {
  const { ofPeg } = worthCombinations(venue, model);
  return {
    asked: venue.pegs.map((peg) => ({ combination: ofPeg(peg, null), sessions: 0 })),
    read: (answers) => venue.pegs.map(({ water, peg }, i) => ({ water, peg, ...answers[i]! })),
  };
}

/** A peg's worth in a month. */
export interface PegMonthWorth extends WorthEstimate {
  readonly water: string;
  readonly peg: string;
  readonly month: Month;
}

/** A peg fished less often than this in a month is known there by its features and by its other months: at most fair. */
const MIN_FOR_SOLID = 3;

/** Asks for the worth of every peg in every month. A peg never drawn, and a month its water was not fished in, is thin. */
export function pegMonthQuestion(
  venue: RatedVenue,
  sessions: readonly ModelSession[],
  model: RatingModel,
): Question<PegMonthWorth> {
  const { ofPeg } = worthCombinations(venue, model);
  const seen = countSessions(venue, sessions);
  const places = venue.pegs.flatMap((peg) =>
    MONTHS.map((month) => ({
      water: peg.water,
      peg: peg.peg,
      month,
      combination: ofPeg(peg, month - 1),
      sessions: seen.pegMonths.get(`${pegKey(peg.water, peg.peg)} ${month}`) ?? 0,
    })),
  );
  return {
    asked: places,
    read: (answers) =>
      places.map(({ water, peg, month }, i): PegMonthWorth => {
        const row = answers[i]!;
        const isUnseen = !seen.pegs.has(pegKey(water, peg)) || !seen.waterMonths.has(`${water} ${month}`);
        return { ...row, water, peg, month, evidence: isUnseen ? 'thin' : atMost(row.evidence, row.sessions) };
      }),
  };
}

function atMost(evidence: Evidence, sessions: number): Evidence {
  return evidence === 'solid' && sessions < MIN_FOR_SOLID ? 'fair' : evidence;
}

/** Of a peg that was moved to new ground, sessions on the old say nothing. */
function countSessions(venue: RatedVenue, sessions: readonly ModelSession[]) {
  const stands = new Map(venue.pegs.map((peg) => [pegKey(peg.water, peg.peg), peg]));
  const pegs = new Set<PegKey>();
  const waterMonths = new Set<string>();
  const pegMonths = new Map<string, number>();
  for (const { session, event } of sessions) {
    const stand = stands.get(pegKey(session.water, session.peg));
    const key = stand === undefined ? pegKey(session.water, session.peg) : groundOn(stand, event.day);
    const month = monthOf(event.day);
    pegs.add(key);
    waterMonths.add(`${session.water} ${month}`);
    pegMonths.set(`${key} ${month}`, (pegMonths.get(`${key} ${month}`) ?? 0) + 1);
  }
  return { pegs, waterMonths, pegMonths };
}
