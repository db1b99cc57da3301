import { type Day, MONTHS, monthOf } from '../domain/day.ts';
import type { Session } from '../domain/session.ts';
import { eventPlaces } from './event-places.ts';
import { partGrams } from './logged-part.ts';
import type { RatedVenue } from './rated-venue.ts';
import type { FramingMakeUp } from './ratings.ts';

/**
 * What framing bags were made of, by water and month: the mean over the bags of each part's share, every bag counting
 * the same. Only bags whose every part is known count; months without one are left out.
 */
export function framingMakeUp(venue: RatedVenue): FramingMakeUp[] {
  const parts = venue.settings.bagParts;
  const framing = eventPlaces(venue).flatMap(({ event, weighed }) =>
    weighed.slice(0, event.framePlaces).flatMap((session) => {
      // Of a match over several waters, each water counts what was caught in it.
      if (session.water !== event.water) return [];
      const shares = isPartWeighed(venue, event.day) ? sharesOf(session, venue) : undefined;
      return shares === undefined ? [] : [{ water: event.water, month: monthOf(event.day), shares }];
    }),
  );
  const bags = Map.groupBy(framing, ({ water, month }) => `${water} ${month}`);
  return venue.waters.flatMap((water) =>
    MONTHS.flatMap((month): FramingMakeUp[] => {
      const these = bags.get(`${water.id} ${month}`);
      if (these === undefined) return [];
      const shares = parts.map(({ id }, i) => ({
        part: id,
        share: these.reduce((sum, bag) => sum + bag.shares[i]!, 0) / these.length,
      }));
      return [{ water: water.id, month, bags: these.length, shares }];
    }),
  );
}

/** Before a part was first weighed apart, its fish lay in the others or in none: the make-up is not known. */
function isPartWeighed({ settings }: RatedVenue, day: Day): boolean {
  return settings.bagParts.every(({ since }) => since === undefined || since <= day);
}

/** Each part's share of a bag, in the venue's order; undefined where a part is not known. */
function sharesOf(
  session: Session & { readonly weightGrams: number },
  venue: RatedVenue,
): readonly number[] | undefined {
  const bagParts = venue.settings.bagParts;
  const grams = bagParts.map(({ id }) => partGrams(session, id, bagParts));
  if (grams.length === 0 || grams.includes(undefined)) return undefined;
  const known = grams as readonly number[];
  // Parts may come to a little more or less than the bag by the scale's rounding.
  const whole = Math.max(
    session.weightGrams,
    known.reduce((sum, part) => sum + part, 0),
  );
  return known.map((part) => part / whole);
}
