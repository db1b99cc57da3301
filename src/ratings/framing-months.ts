import { MONTHS, type Month, monthOf } from '../domain/day.ts';
import { type EventPlaces, eventPlaces } from './event-places.ts';
import { quantile } from './quantile.ts';
import type { RatedVenue } from './rated-venue.ts';
import type { FramingMonth } from './ratings.ts';

/**
 * Weight to frame and to win by water and month, from the log: the middle over the month's matches, with the least and
 * the most. An event with fewer weighed bags than places says nothing of the weight to frame, for any bag would have.
 */
export function framingMonths(venue: RatedVenue): FramingMonth[] {
  const places = Map.groupBy(eventPlaces(venue), ({ event }) => `${event.water} ${monthOf(event.day)}`);
  return venue.waters.flatMap((water) =>
    MONTHS.map((month) => framingMonth(water.id, month, places.get(`${water.id} ${month}`) ?? [])),
  );
}

function framingMonth(water: string, month: Month, places: readonly EventPlaces[]): FramingMonth {
  const frames = places.flatMap(({ event, weighed }) => {
    const last = weighed[event.framePlaces - 1];
    return last === undefined ? [] : [last.weightGrams / 1000];
  });
  const wins = places.map(({ weighed }) => weighed[0]!.weightGrams / 1000);
  const at = (weights: readonly number[], probability: number) =>
    weights.length === 0 ? null : quantile(weights, probability);
  return {
    water,
    month,
    events: places.length,
    frameKg: at(frames, 0.5),
    winKg: at(wins, 0.5),
    frameLowKg: at(frames, 0),
    frameHighKg: at(frames, 1),
    winLowKg: at(wins, 0),
    winHighKg: at(wins, 1),
  };
}
