import { type BagModel, fitBag } from './bag-model.ts';
import { fitTemperatures } from './feature-temperatures.ts';
import { goOnFrom } from './fit-ratings.ts';
import type { FitStart } from './fit-report.ts';
import type { WorkKeeper } from './kept-work.ts';
import { settledLog } from './log-before.ts';
import { type RatedVenue, ratedVenue } from './rated-venue.ts';
import type { AskedTerms } from './rating-model.ts';
import type { BagId } from './ratings.ts';
import type { SessionChoice } from './sessions-in-model.ts';

/** Of a smaller log a fit from nothing takes a second or two. */
const MANY_SESSIONS = 20_000;
/** As near as the published fit of a large log. */
const NEAR = 0.05;

/** Where the fits of a bag may begin. */
export interface SettledStarts {
  readonly bag: FitStart;
  /** Of the total only, where temperatures are logged. */
  readonly temperature: FitStart | null;
}

/**
 * Where the fits of a large log begin: from those of the log before its last month, which are the same, bit for bit, for as long as
 * that month lasts. Kept, they spare a match more most of its search; what it ends at does not depend on whether they were. Null
 * where the log is small, or its last month a large part of it.
 */
export function settledStarts(
  venue: RatedVenue,
  bag: BagId,
  choice: SessionChoice & { readonly asked: AskedTerms },
  { start, keeper }: { readonly start: FitStart | null; readonly keeper: WorkKeeper },
): SettledStarts | null {
  if (venue.sessions.length < MANY_SESSIONS) return null;
  const settled = settledLog(venue);
  if (settled === venue) return null;
  const inputs = ['starts', bag, JSON.stringify([choice, start]), JSON.stringify(ratedVenue(settled))];
  return keeper.of(inputs, () => {
    const near = { tolerance: NEAR, ...(start === null ? {} : { start }) };
    const fitted = fitBag(settled, bag, choice, near);
    return { bag: goOnFrom(fitted.fit), temperature: bag === 'total' ? temperatureStart(settled, fitted) : null };
  });
}

function temperatureStart(settled: RatedVenue, total: BagModel): FitStart | null {
  const fitted = fitTemperatures(settled, total);
  return fitted === null ? null : goOnFrom(fitted.fit);
}
