import { bagTables } from './bag-model.ts';
import { expectedBags } from './expected-bags.ts';
import { firstLook, type Ground, groundOf } from './first-look.ts';
import { fishSizes } from './fish-sizes.ts';
import { awayFromZero } from './fit-ratings.ts';
import { unsettledNotes } from './fit-report.ts';
import { framingMakeUp } from './framing-make-up.ts';
import { framingMonths } from './framing-months.ts';
import { NOTHING_KEPT, type WorkKeeper } from './kept-work.ts';
import { settledLog } from './log-before.ts';
import { type RatedVenue, ratedVenue } from './rated-venue.ts';
import { doTask, ratingTasks, type TaskGround, type TaskResult } from './rating-tasks.ts';
import type { Ratings } from './ratings.ts';
import { sessionsInModel } from './sessions-in-model.ts';
import { whatCannotBeTold } from './what-cannot-be-told.ts';
import { type DnwEffect, dnwEffect, withoutDnw } from './without-dnw.ts';

export interface RateOptions {
  /** Of the simulated fields; the same seed gives the same bytes. */
  readonly seed: number;
  /** Told what is being worked on, for a person who waits. */
  readonly progress?: (what: string) => void;
  /** Knows what an earlier run of this very code worked out: saves all that does not rest on what changed, and changes no bit. */
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
  readonly ground: TaskGround;
  readonly look: KeptLook;
}

/** A first look and what the DNWs do, of the log before its last month. Plain data. */
interface KeptLook extends Ground {
  readonly effect: DnwEffect | null;
}

export function beginRatings(
  venue: RatedVenue,
  { progress, keeper = NOTHING_KEPT }: Pick<RateOptions, 'progress' | 'keeper'>,
): BegunRatings {
  progress?.('first look');
  const settled = settledLog(venue);
  const look = keeper.of(['ground', JSON.stringify(ratedVenue(settled))], (): KeptLook => {
    const seen = firstLook(settled);
    return { ...groundOf(seen), effect: dnwEffect(settled, seen) };
  });
  const { lesson, asked } = look;
  const start = look.start === null ? null : awayFromZero(look.start);
  return { look, ground: { venue, dnw: lesson.mechanism, asked, start } };
}

/** Puts the results of all tasks together, in the order of the tasks. */
export function finishRatings(
  venue: RatedVenue,
  { look }: BegunRatings,
  results: readonly TaskResult[],
  { seed, progress }: RateOptions,
): Ratings {
  const fits = results.flatMap((result) => result.fits);
  if (look.effect !== null) fits.unshift(look.effect.fit);
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
    withoutDnw: withoutDnw(look.effect, tables[0]!, sessions.filter(({ isDnw }) => isDnw === true).length),
    dnwLesson: look.lesson,
    fits,
    notes: notesOn(venue, fits),
  };
}

/** What a reader must know of a log and of the fits to it, in the venue's own words. */
export function notesOn(venue: RatedVenue, fits: Ratings['fits']): Ratings['notes'] {
  return [...unsettledNotes(fits), ...whatCannotBeTold(venue, sessionsInModel(venue, 'total').sessions)];
}
