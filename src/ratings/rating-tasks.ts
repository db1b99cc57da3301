import { backtest } from './backtest.ts';
import { fitBag, rateBag, type ToldBag } from './bag-model.ts';
import { besideWorths } from './beside/beside-worths.ts';
import { choiceWorths } from './choice-worth.ts';
import type { DnwMechanism } from './dnw-mechanism.ts';
import { featureTemperatures, fitTemperatures } from './feature-temperatures.ts';
import { type FitEnd, type FitReport, type FitStart, fitReport } from './fit-report.ts';
import { NOTHING_KEPT, type WorkKeeper } from './kept-work.ts';
import type { RatedVenue } from './rated-venue.ts';
import type { AskedTerms } from './rating-model.ts';
import type { BagId, Ratings } from './ratings.ts';
import { settledStart } from './settled-starts.ts';

/** What all tasks of a venue's ratings start from. Plain data, like all here: a task may be done in another thread. */
export interface TaskGround {
  readonly venue: RatedVenue;
  readonly dnw: DnwMechanism | null;
  readonly asked: AskedTerms;
  /** Where the fits may begin; null where the log says nothing. */
  readonly start: FitStart | null;
}

/** A share of the ratings that needs none of the others: a bag with all its tables, the worth by temperature, or the back-test. */
export type RatingTask =
  | { readonly of: 'bag'; readonly bag: BagId }
  | { readonly of: 'water temperature' }
  | { readonly of: 'back-test' };

/** What came of a task, with how its fits ended. */
export interface TaskResult {
  readonly told: ToldBag | null;
  /** Of the total bag only. */
  readonly choices: Ratings['choices'];
  /** Of every term beside the model, whether it earned its place or not. */
  readonly besides: Ratings['besides'];
  readonly temperatures: Ratings['featureTemperatures'];
  readonly backtest: Ratings['backtest'];
  readonly fits: readonly FitReport[];
}

/** The tasks of a venue, the total first. */
export function ratingTasks({ settings, sessions }: RatedVenue): readonly RatingTask[] {
  const parts = settings.bagParts.filter(({ id }) =>
    sessions.some((session) => (session.parts[id]?.weightGrams ?? 0) > 0),
  );
  return [
    { of: 'bag', bag: 'total' },
    ...parts.map(({ id }) => ({ of: 'bag', bag: id }) as const),
    { of: 'water temperature' },
    { of: 'back-test' },
  ];
}

/** Whether a task rests on the first look; the back-test takes its own, of the years before. */
export function needsGround({ of }: RatingTask): boolean {
  return of !== 'back-test';
}

/** Does one task: the same figures to the last bit, in whichever thread and order. */
export function doTask(
  ground: TaskGround,
  task: RatingTask,
  progress?: (what: string) => void,
  keeper: WorkKeeper = NOTHING_KEPT,
): TaskResult {
  const fits: FitReport[] = [];
  const report = (of: string, fit: FitEnd) => fits.push(fitReport(of, fit));
  const nothing = { told: null, choices: [], besides: [], temperatures: [], backtest: null, fits };
  const { venue, asked } = ground;
  const choice = { dnw: ground.dnw ?? undefined, asked };
  if (task.of === 'back-test') {
    return { ...nothing, backtest: backtest(venue, { progress, report, keeper }) };
  }
  if (task.of === 'water temperature') {
    progress?.('water temperature');
    const start = settledStart(venue, task.of, choice, { start: ground.start, keeper });
    const fitted = fitTemperatures(venue, choice, start === null ? {} : { start });
    if (fitted === null) return nothing;
    report('water temperature', fitted.fit);
    return { ...nothing, temperatures: featureTemperatures(venue, fitted) };
  }
  const { bag } = task;
  const name = venue.settings.bagParts.find(({ id }) => id === bag)?.name.toLowerCase() ?? 'whole bag';
  progress?.(name);
  const start = settledStart(venue, bag, choice, { start: ground.start, keeper });
  const { fitted, ...told } = rateBag(venue, fitBag(venue, bag, choice, start === null ? {} : { start }));
  report(bag, fitted.fit);
  if (fitted.presence !== null) report(`any ${name} at all`, fitted.presence.fit);
  if (bag !== 'total') return { ...nothing, told };
  const choices = choiceWorths(venue, fitted, { progress });
  progress?.('what the day reveals');
  return { ...nothing, told, choices, besides: besideWorths(venue, fitted) };
}
