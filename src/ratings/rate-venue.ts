import { bagTables } from './bag-model.ts';
import { expectedBags } from './expected-bags.ts';
import { type FirstLook, firstLook } from './first-look.ts';
import { fishSizes } from './fish-sizes.ts';
import { type FitReport, fitReport, unsettledNotes } from './fit-report.ts';
import { framingMakeUp } from './framing-make-up.ts';
import { framingMonths } from './framing-months.ts';
import type { WorkKeeper } from './kept-work.ts';
import type { RatedVenue } from './rated-venue.ts';
import { doTask, ratingTasks, type TaskGround, type TaskResult } from './rating-tasks.ts';
import type { Ratings } from './ratings.ts';
import { sessionsInModel } from './sessions-in-model.ts';
import { whatCannotBeTold } from './what-cannot-be-told.ts';
import { withoutDnw } from './without-dnw.ts';

export interface RateOptions {
  /** Of the simulated fields; the same seed gives the same bytes. */
  readonly seed: number;
  /** Told what is being worked on, for a person who waits. */
  readonly progress?: (what: string) => void;
  /** How the fits of an earlier state of this log ended: saves most of the search, and changes no printed digit. */
  readonly earlier?: readonly FitReport[];
  /** Knows what an earlier run of this very code worked out: saves all that does not rest on what changed. */
  readonly keeper?: WorkKeeper;
}

/** Rates a checked venue: every table the guide publishes about worth, from its log alone. */
export function rateVenue(venue: RatedVenue, options: RateOptions): Ratings {
  const begun = beginRatings(venue, options);
  return finishRatings(
    venue,
    begun,
    ratingTasks(venue).map((task) => doTask(begun.ground, task, options.progress, options.keeper)),
    options,
  );
}

/** What every task needs to know before it can begin. */
export interface BegunRatings {
  readonly look: FirstLook;
  readonly ground: TaskGround;
}

const WITHOUT_DNW = 'total without DNWs';

export function beginRatings(venue: RatedVenue, { progress, earlier = [] }: RateOptions): BegunRatings {
  progress?.('first look');
  const before = earlier.find(({ of, isSettled }) => of === WITHOUT_DNW && isSettled);
  const look = firstLook(venue, before?.start);
  const { lesson, asked, start } = look;
  return { look, ground: { venue, dnw: lesson.mechanism, asked, start, earlier } };
}

/** Puts the results of all tasks together, in the order of the tasks. */
export function finishRatings(
  venue: RatedVenue,
  { look }: BegunRatings,
  results: readonly TaskResult[],
  { seed, progress }: RateOptions,
): Ratings {
  const fits = results.flatMap((result) => result.fits);
  if (look.without !== null) fits.unshift(fitReport(WITHOUT_DNW, look.without.fit));
  const bags = results.flatMap(({ told }) => told ?? []);
  const total = bags[0]!;
  const tables = bags.map(bagTables);
  const tested = results.find(({ backtest }) => backtest !== null)?.backtest ?? null;
  const earned = new Set(tested?.besides.flatMap((test) => ('isEarned' in test && test.isEarned ? [test.of] : [])));
  progress?.('chance to frame');
  const { sessions, leftOut } = sessionsInModel(venue, 'total');
  return {
    bags: tables,
    waterLevels: total.levels,
    framing: framingMonths(venue, { levels: total.levels, eventSd: total.outlook.eventSd }),
    expectedBags: expectedBags(venue, bags, seed),
    framingMakeUp: framingMakeUp(venue),
    featureTemperatures: results.flatMap(({ temperatures }) => temperatures),
    fishSizes: fishSizes(venue),
    choices: results.flatMap(({ choices }) => choices),
    besides: results.flatMap(({ besides }) => besides).filter(({ of }) => earned.has(of)),
    backtest: tested,
    leftOut,
    withoutDnw: withoutDnw(venue, look, tables[0]!),
    dnwLesson: look.lesson,
    fits,
    notes: [...unsettledNotes(fits), ...whatCannotBeTold(venue, sessions)],
  };
}
