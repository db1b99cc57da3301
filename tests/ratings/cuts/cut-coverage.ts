import { daysBetween } from '../../../src/domain/day.ts';
import { forecastCuts } from '../../../src/ratings/cuts/forecast-cuts.ts';
import type { SimulatedBanks } from './simulated-banks.ts';

/** How forecasts did against what came. */
export interface CutCoverage {
  readonly forecasts: number;
  /** Share of days on which a cut came due inside the 80% interval, and on either side. */
  readonly inside: number;
  readonly before: number;
  readonly after: number;
  /** Share before the middle day. */
  readonly beforeMiddle: number;
  /** Mean width of the interval in days. */
  readonly widthDays: number;
}

/** Counts how often the next cut came due where it was forecast. */
export function cutCoverage(venues: readonly SimulatedBanks[]): CutCoverage {
  const rows = venues.flatMap(({ histories, today, nestingMonths, nextDue }) =>
    forecastCuts(histories, today, nestingMonths).flatMap(({ peg, earliest, dueOn, latest }) => {
      const next = nextDue.get(peg);
      return next === undefined ? [] : [{ next, earliest, dueOn, latest }];
    }),
  );
  const share = (holds: (row: (typeof rows)[number]) => boolean) => rows.filter(holds).length / rows.length;
  return {
    forecasts: rows.length,
    inside: share(({ next, earliest, latest }) => earliest <= next && next <= latest),
    before: share(({ next, earliest }) => next < earliest),
    after: share(({ next, latest }) => next > latest),
    beforeMiddle: share(({ next, dueOn }) => next < dueOn),
    widthDays: rows.reduce((sum, { earliest, latest }) => sum + daysBetween(earliest, latest), 0) / rows.length,
  };
}
