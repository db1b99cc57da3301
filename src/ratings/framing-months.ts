import { type Day, MONTHS, type Month, monthOf } from '../domain/day.ts';
import { type EventPlaces, eventPlaces } from './event-places.ts';
import { quantile } from './quantile.ts';
import type { RatedVenue } from './rated-venue.ts';
import type { FramingMonth, WaterLevel } from './ratings.ts';
import { stretchWeights } from './water-levels.ts';
import { weightedQuantile } from './weighted-quantile.ts';

/** What the total bag's fit says of how the waters' own levels changed. */
export interface LevelsOfLog {
  readonly levels: readonly WaterLevel[];
  /** Scatter of days about their level, on the log scale. */
  readonly eventSd: number;
}

/**
 * Weight to frame and to win by water and month, from the log: the middle over the month's matches, with the least and
 * the most. They speak of now: matches of years in which the water fished otherwise count the less, the further apart and the
 * more matches there are since, and least and most are of those that count half or more. An event with fewer weighed bags than
 * places says nothing of the weight to frame, for any bag would have.
 */
export function framingMonths(venue: RatedVenue, drift: LevelsOfLog = { levels: [], eventSd: 1 }): FramingMonth[] {
  const places = Map.groupBy(eventPlaces(venue), ({ event }) => `${event.water} ${monthOf(event.day)}`);
  return venue.waters.flatMap((water) =>
    MONTHS.map((month) => framingMonth(water.id, month, places.get(`${water.id} ${month}`) ?? [], drift)),
  );
}

/** A level within a tenth of today's is today's. */
const NEAR_NOW = 0.1;

interface WeighedPlaces extends EventPlaces {
  readonly counts: number;
  /** How the water fished in its stretch of the log; null where that never changed. */
  readonly level: WaterLevel | null;
}

function framingMonth(water: string, month: Month, places: readonly EventPlaces[], drift: LevelsOfLog): FramingMonth {
  const weighed = weighedPlaces(water, places, drift);
  const top = Math.max(...weighed.map(({ counts }) => counts));
  const counted = weighed.filter(({ counts }) => counts >= 0.5 * top);
  const frames = (of: readonly WeighedPlaces[]) =>
    of.flatMap(({ event, weighed: bags, counts }) => {
      const last = bags[event.framePlaces - 1];
      return last === undefined ? [] : [{ value: last.weightGrams / 1000, counts }];
    });
  const wins = (of: readonly WeighedPlaces[]) =>
    of.map(({ weighed: bags, counts }) => ({ value: bags[0]!.weightGrams / 1000, counts }));
  // Where none of the matches that count most had enough bags, the others still say something.
  const frameSpan = frames(counted).length > 0 ? frames(counted) : frames(weighed);
  const last = counted.at(-1)?.level ?? null;
  const levelThen = last === null || Math.abs(last.logLevel) < NEAR_NOW ? null : Math.exp(last.logLevel);
  return {
    water,
    month,
    events: places.length,
    mostlyFrom:
      counted.length === weighed.length && levelThen === null
        ? null
        : { day: counted[0]!.event.day, events: counted.length, levelThen },
    frameKg: middle(frames(weighed)),
    winKg: middle(wins(weighed)),
    frameLowKg: end(frameSpan, 0),
    frameHighKg: end(frameSpan, 1),
    winLowKg: end(wins(counted), 0),
    winHighKg: end(wins(counted), 1),
  };
}

interface Counted {
  readonly value: number;
  readonly counts: number;
}

function middle(of: readonly Counted[]): number | null {
  return of.length === 0 ? null : weightedQuantile(of, 0.5);
}

function end(of: readonly Counted[], probability: 0 | 1): number | null {
  if (of.length === 0) return null;
  return quantile(
    of.map(({ value }) => value),
    probability,
  );
}

/** A month's matches in the order of days, each with what it counts beside one of the water's latest stretch. */
function weighedPlaces(
  water: string,
  places: readonly EventPlaces[],
  { levels, eventSd }: LevelsOfLog,
): WeighedPlaces[] {
  const own = levels.filter((level) => level.water === water);
  const stretchOn = (day: Day) => own.findLast(({ from }) => from <= day) ?? own[0] ?? null;
  const stretches = [...Map.groupBy(places, ({ event }) => stretchOn(event.day))];
  const weights = stretchWeights(
    stretches.map(([level, of]) => ({ events: of.length, level })),
    eventSd,
  );
  return stretches
    .flatMap(([level, of], i) => of.map((each) => ({ ...each, level, counts: weights[i]! })))
    .sort((a, b) => (a.event.day < b.event.day ? -1 : 1));
}
