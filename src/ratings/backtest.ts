import { addDays, type Day, yearOf } from '../domain/day.ts';
import { besidesTested } from './beside/besides-tested.ts';
import { drawBalance } from './draw-balance.ts';
import { type FirstLook, firstLook } from './first-look.ts';
import type { FitListener, FitStart } from './fit-report.ts';
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
import { partBacktests } from './part-backtest.ts';
import type { RatedVenue } from './rated-venue.ts';
import type { Backtest, ForecasterName } from './ratings.ts';
import { MONTH_SEASON, temperatureSeason } from './season.ts';
import { type ModelSession, sessionsInModel } from './sessions-in-model.ts';
import { testedEvents } from './tested-events.ts';

/** Fewer matches than this before the year under test foretell nothing worth scoring. */
const MIN_PAST_EVENTS = 8;

interface BacktestOptions extends FitListener {
  /** Where the search for the deviations begins: where it ends is not of it. */
  readonly start?: FitStart | null;
  /** Spares the months whose past was the same in an earlier run. */
  readonly keeper?: WorkKeeper;
}

/**
 * Foretells each match of the log's last twelve calendar months, the one it ends in among them, from earlier ones only, a month at
 * a time from what came before it: a match more in that month leaves all that was learned of the months before as it was. It
 * scores the model beside saying nothing and beside plain peg averages. Only matches that list every weight are tested.
 * Where at least half of them log the water's temperature, the model by temperature is tested too, and then all are
 * tested on those matches alone, so that the scores compare. Null where the log is too short. Who does not weigh, and which
 * further terms the model holds, is learned from the years before as well.
 */
export function backtest(
  venue: RatedVenue,
  { progress, report, start = null, keeper = NOTHING_KEPT }: BacktestOptions = {},
): Backtest | null {
  const lastDay = sessionsInModel(venue, 'total').sessions.at(-1)?.event.day;
  if (lastDay === undefined) return null;
  const yearFrom = dayBeforeYear(lastDay);
  const before = venueBefore(venue, yearFrom);
  if (new Set(sessionsInModel(before, 'total').sessions.map(({ event }) => event.id)).size < MIN_PAST_EVENTS)
    return null;
  progress?.('back-test: what the years before it taught');
  const look = keeper.of(['first look', JSON.stringify(before)], () => lookOf(before, start));
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
        isBeside: true,
        memory,
        told: (past, learned) => {
          first = past;
          report?.('back-test', learned);
        },
      }),
    ],
    ...(isTemperatureTested
      ? [['model-by-temperature', temperatureForecaster(venue, look, memory)] as [ForecasterName, Forecaster]]
      : []),
    ['flat', flatGuess],
    ['peg-average', rawPegAverage],
  ];
  const foretold = forecasters.map(([name, forecaster]) => {
    progress?.(`back-test: ${name}`);
    return { name, events: forecastByMonth(sessions, events, forecaster) };
  });
  progress?.('back-test: parts and what the day reveals');
  return {
    events: events.length,
    sessions: events.flat().filter(({ isCensored }) => !isCensored).length,
    scores: foretold.map(({ name, events: of }) => ({ name, ...scoreForecasts(of) })),
    calibration: calibrationOf(foretold[0]!.events),
    parts: partBacktests(venue, yearFrom, look, memory),
    balance: drawBalance(foretold[0]!.events),
    besides: besidesTested(venue, first!(), foretold[0]!.events),
  };
}

function temperatureForecaster(
  venue: RatedVenue,
  { start }: Pick<FirstLook, 'start'>,
  memory: ForecasterMemory,
): Forecaster {
  const seasonOf = (past: readonly ModelSession[]) => temperatureSeason(past.map(({ event }) => event))!;
  return modelForecaster(venue, seasonOf, { start, memory: { ...memory, guide: `by temperature ${memory.guide}` } });
}

/** The last day before the twelve calendar months that end with a day's own. */
function dayBeforeYear(last: Day): Day {
  const year = yearOf(last) - 1;
  const firstOfMonth = `${String(year).padStart(4, '0')}${last.slice(4, 7)}-01`;
  return addDays(`${addDays(firstOfMonth, 31).slice(0, 7)}-01`, -1);
}

/** What the back-test needs of a first look, as plain data. */
function lookOf(venue: RatedVenue, from: FitStart | null): Pick<FirstLook, 'lesson' | 'asked' | 'start'> {
  const { lesson, asked, start } = firstLook(venue, from);
  return { lesson, asked, start };
}

/** The venue as it was known on a day: its log up to then. */
function venueBefore(venue: RatedVenue, last: Day): RatedVenue {
  const events = venue.events.filter(({ day }) => day <= last);
  const ids = new Set(events.map(({ id }) => id));
  return { ...venue, events, sessions: venue.sessions.filter(({ event }) => ids.has(event)) };
}

/** Whether the thermometer was in use before each tested month, so that every one can be foretold by it. */
function isTemperatureKnownBefore(sessions: readonly ModelSession[], events: readonly ModelSession[][]): boolean {
  const firstMonth = events[0]?.[0]?.event.day.slice(0, 7);
  if (firstMonth === undefined) return false;
  const past = sessions.filter(({ event }) => event.day < `${firstMonth}-01`);
  return temperatureSeason(past.map(({ event }) => event)) !== null;
}

/** Has events foretold month by month, each month from the sessions before its first day. */
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
