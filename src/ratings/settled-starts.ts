import { fitBag } from './bag-model.ts';
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

/** What a fit is of. */
export type StartOf = BagId | 'water temperature';

/**
 * Where the fit of a large log begins: from that of the log before its last month, which is the same, bit for bit, for as long as
 * that month lasts. Kept, it spares a match more most of its search; what it ends at does not depend on whether it was. `start` itself
 * where the log is small, or its last month a large part of it.
 */
export function settledStart(
  venue: RatedVenue,
  of: StartOf,
  choice: SessionChoice & { readonly asked: AskedTerms },
  { start, keeper }: { readonly start: FitStart | null; readonly keeper: WorkKeeper },
): FitStart | null {
  if (venue.sessions.length < MANY_SESSIONS) return start;
  const settled = settledLog(venue);
  if (settled === venue) return start;
  const inputs = ['start', of, JSON.stringify([choice, start]), JSON.stringify(ratedVenue(settled))];
  return keeper.of(inputs, () => {
    const near = { tolerance: NEAR, ...(start === null ? {} : { start }) };
    const fitted =
      of === 'water temperature' ? fitTemperatures(settled, choice, near) : fitBag(settled, of, choice, near);
    return fitted === null ? start : goOnFrom(fitted.fit);
  });
}
