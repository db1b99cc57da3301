import { MONTHS, type Month, monthOf } from '../domain/day.ts';
import { type PegKey, pegKey } from '../domain/peg.ts';
import type { RatedVenue } from './rated-venue.ts';
import type { Evidence, PegReturn } from './ratings.ts';
import { returnCombinations } from './return-combinations.ts';
import { type FittedModel, type ReturnWithDoubt, returnsOf } from './returns.ts';
import type { ModelSession } from './sessions-in-model.ts';

/** Return of every peg over the year. */
export function pegReturns(venue: RatedVenue, { model, fit }: FittedModel): PegReturn[] {
  const { ofPeg } = returnCombinations(venue, model);
  const { mean, sd } = fit.posterior(venue.pegs.map((peg) => ofPeg(peg, null)));
  return venue.pegs.map(({ water, peg }, i) => ({ water, peg, logReturn: mean[i]!, sd: sd[i]! }));
}

/** A peg's return in a month. */
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
  fitted: FittedModel,
): PegMonthReturn[] {
  const { ofPeg } = returnCombinations(venue, fitted.model);
  const seen = countSessions(sessions);
  const places = venue.pegs.flatMap((peg) =>
    MONTHS.map((month) => ({
      water: peg.water,
      peg: peg.peg,
      month,
      combination: ofPeg(peg, month - 1),
      sessions: seen.pegMonths.get(`${pegKey(peg.water, peg.peg)} ${month}`) ?? 0,
    })),
  );
  return returnsOf(fitted, places).map((row, i): PegMonthReturn => {
    const { water, peg, month } = places[i]!;
    const isUnseen = !seen.pegs.has(pegKey(water, peg)) || !seen.waterMonths.has(`${water} ${month}`);
    return { ...row, water, peg, month, evidence: isUnseen ? 'thin' : atMost(row.evidence, row.sessions) };
  });
}

function atMost(evidence: Evidence, sessions: number): Evidence {
  return evidence === 'solid' && sessions < LEAST_FOR_SOLID ? 'fair' : evidence;
}

function countSessions(sessions: readonly ModelSession[]) {
  const pegs = new Set<PegKey>();
  const waterMonths = new Set<string>();
  const pegMonths = new Map<string, number>();
  for (const { session, event } of sessions) {
    const key = pegKey(session.water, session.peg);
    const month = monthOf(event.day);
    pegs.add(key);
    waterMonths.add(`${session.water} ${month}`);
    pegMonths.set(`${key} ${month}`, (pegMonths.get(`${key} ${month}`) ?? 0) + 1);
  }
  return { pegs, waterMonths, pegMonths };
}
