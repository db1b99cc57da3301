import { addDays, type Day, yearOf } from '../domain/day.ts';
import { besidesTested } from './beside/besides-tested.ts';
import { drawBalance } from './draw-balance.ts';
import { firstLook, type Ground, groundOf } from './first-look.ts';
import type { FitListener } from './fit-report.ts';
import { calibrationOf, type ForecastEvent, scoreForecasts } from './forecast-score.ts';
import {
  type FittedPast,
  type Forecaster,
  type ForecasterMemory,
  flatGuess,
  modelForecaster,
  rawPegAverage,
} from './forecasters.ts';
import { NOTHING_KEPT, type WorkKeeper } from './kept-work.ts';
import { venueBefore } from './log-before.ts';
import { partBacktests } from './part-backtest.ts';
import { type RatedVenue, ratedVenue } from './rated-venue.ts';
import type { Backtest, ForecasterName } from './ratings.ts';
import { type ModelSession, sessionsInModel } from './sessions-in-model.ts';
import { MONTH_SEASON, temperatureSeason } from './temperature-season.ts';
import { testedEvents } from './tested-events.ts';

/** Fewer matches than this before the year under test forecast nothing worth scoring. */
const MIN_PAST_EVENTS = 8;

interface BacktestOptions extends FitListener {
  /** Spares the months whose past was the same in an earlier run. */
  readonly keeper?: WorkKeeper;
}

/**
 * Forecasts each match of the log's last twelve calendar months, the one it ends in among them, from earlier ones only, a month at
 * a time from what came before it: a match more in that month leaves all that was learned of the months before as it was. It
 * scores the model beside saying nothing and beside plain peg averages. Only matches that list every weight are tested.
 * Where at least half of them log the water's temperature, the model by temperature is tested too, and then all are
 * tested on those matches alone, so that the scores compare. Null where the log is too short. Who does not weigh, and which
 * further terms the model holds, is learned from the years before as well, with the deviations up to the end of a half-year.
 */
export function backtest(
  venue: RatedVenue,
  { progress, report, keeper = NOTHING_KEPT }: BacktestOptions = {},
): Backtest | null {
  const lastDay = sessionsInModel(venue, 'total').sessions.at(-1)?.event.day;
  if (lastDay === undefined) return null;
  const yearFrom = dayBeforeYear(lastDay);
  const before = venueBefore(venue, yearFrom);
  if (countEvents(before) < MIN_PAST_EVENTS) return null;
  const learnUntil = lastHalfYear(before, yearFrom);
  const lessons = venueBefore(venue, learnUntil);
  progress?.('back-test: what the years before it taught');
  const look = keeper.of(['first look', JSON.stringify(ratedVenue(lessons))], () => groundOf(firstLook(lessons)));
  const { sessions } = sessionsInModel(venue, 'total', { dnw: look.lesson.mechanism ?? undefined });
  const tested = testedEvents(sessions, yearFrom);
  const withTemperature = tested.filter(([first]) => first!.event.conditions.waterDegreesC !== undefined);
  const isTemperatureTested =
    withTemperature.length * 2 >= tested.length && isTemperatureKnownBefore(sessions, withTemperature);
  const events = isTemperatureTested ? withTemperature : tested;
  if (events.length === 0) return null;
  let first: (() => FittedPast) | null = null;
  const { settings, waters, pegs, retired } = venue;
  const memory: ForecasterMemory = {
    keeper,
    guide: JSON.stringify({ settings, waters, pegs, retired }),
    digestOfPast: keeper.beginnings(sessions),
  };
  const forecasters: [ForecasterName, Forecaster][] = [
    [
      'model',
      modelForecaster(venue, () => MONTH_SEASON, {
        asked: look.asked,
        start: look.start,
        learnUntil,
        isBeside: true,
        memory,
        told: (past, learned) => {
          first = past;
          report?.('back-test', learned);
        },
      }),
    ],
    ...(isTemperatureTested
      ? [
          ['model-by-temperature', temperatureForecaster(venue, look, learnUntil, memory)] as [
            ForecasterName,
            Forecaster,
          ],
        ]
      : []),
    ['flat', flatGuess],
    ['peg-average', rawPegAverage],
  ];
  const forecastBy = forecasters.map(([name, forecaster]) => {
    progress?.(`back-test: ${name}`);
    return { name, events: forecastByMonth(sessions, events, forecaster) };
  });
  progress?.('back-test: parts and what the day reveals');
  return {
    events: events.length,
    sessions: events.flat().filter(({ isCensored }) => !isCensored).length,
    scores: forecastBy.map(({ name, events: of }) => ({ name, ...scoreForecasts(of) })),
    calibration: calibrationOf(forecastBy[0]!.events),
    parts: partBacktests(venue, yearFrom, look, memory),
    balance: drawBalance(forecastBy[0]!.events),
    besides: besidesTested(venue, first!(), forecastBy[0]!.events),
  };
}

function temperatureForecaster(
  venue: RatedVenue,
  { start }: Pick<Ground, 'start'>,
  lessonsUntil: Day,
  memory: ForecasterMemory,
): Forecaster {
  const lessons = venue.events.filter(({ day }) => day <= lessonsUntil);
  const learnUntil = temperatureSeason(lessons) === null ? {} : { learnUntil: lessonsUntil };
  const seasonOf = (past: readonly ModelSession[]) => temperatureSeason(past.map(({ event }) => event))!;
  return modelForecaster(venue, seasonOf, {
    start,
    ...learnUntil,
    memory: { ...memory, guide: `by temperature ${memory.guide}` },
  });
}

function countEvents(venue: RatedVenue): number {
  return new Set(sessionsInModel(venue, 'total').sessions.map(({ event }) => event.id)).size;
}

/** Of a past whose last half-year is a larger share, that half-year has something to teach. */
const SMALL_SHARE = 0.25;

/**
 * The end of the last half-year of the past, where what came after is less than a quarter of it; else the past's own last day. What is
 * learned from there stays as it is while the tested year moves on by a month, so that no month but the new one is forecast again.
 */
function lastHalfYear(past: RatedVenue, last: Day): Day {
  const ends = ['06-30', '12-31'].flatMap((end) =>
    [yearOf(last) - 1, yearOf(last)].map((year) => `${year}-${end}` as Day),
  );
  const until = ends
    .filter((day) => day <= last)
    .sort()
    .at(-1)!;
  const lessons = venueBefore(past, until);
  const isMost = lessons.sessions.length >= (1 - SMALL_SHARE) * past.sessions.length;
  return isMost && countEvents(lessons) >= MIN_PAST_EVENTS ? until : last;
}

/** The last day before the twelve calendar months that end with a day's own. */
function dayBeforeYear(last: Day): Day {
  const year = yearOf(last) - 1;
  const firstOfMonth = `${String(year).padStart(4, '0')}${last.slice(4, 7)}-01`;
  return addDays(`${addDays(firstOfMonth, 31).slice(0, 7)}-01`, -1);
}

/** Whether the thermometer was in use before each tested month, so that every one can be forecast by it. */
function isTemperatureKnownBefore(sessions: readonly ModelSession[], events: readonly ModelSession[][]): boolean {
  const firstMonth = events[0]?.[0]?.event.day.slice(0, 7);
  if (firstMonth === undefined) return false;
  const past = sessions.filter(({ event }) => event.day < `${firstMonth}-01`);
  return temperatureSeason(past.map(({ event }) => event)) !== null;
}

/** Has events forecast month by month, each month from the sessions before its first day. */
export function forecastByMonth(
  sessions: readonly ModelSession[],
  events: readonly (readonly ModelSession[])[],
  forecaster: Forecaster,
): ForecastEvent[] {
  const months = Map.groupBy(events, ([first]) => first!.event.day.slice(0, 7));
  return [...months].flatMap(([month, ofMonth]) => {
    const past = sessions.filter(({ event }) => event.day < `${month}-01`);
    const future = ofMonth.flat();
    const forecasts = forecaster(past, future);
    const forecastOf = new Map(future.map((session, i) => [session, forecasts[i]!]));
    return ofMonth.map((event) => ({ sessions: event, forecasts: event.map((each) => forecastOf.get(each)!) }));
  });
}
