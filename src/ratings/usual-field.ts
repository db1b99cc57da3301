import { matchOf } from '../domain/session.ts';
import { quantile } from './quantile.ts';
import type { RatedVenue } from './rated-venue.ts';

/** How many usually fish a match of a water, and how many of them frame. */
export interface UsualField {
  readonly anglers: number;
  readonly places: number;
}

/**
 * The middle field and the middle number of places of a water's matches; of the venue's, where the water had none. Null
 * where the log holds no match with a known field. Of a match over several waters, each water has those who fished it, and
 * the share of the places that falls to so many of the field.
 */
export function usualField(venue: RatedVenue, water: string): UsualField | null {
  const matches = venue.events.filter((event) => event.kind === 'match');
  const anglersOf = anglersByEvent(venue, matches);
  const wholeField = new Map(
    [...Map.groupBy(matches, matchOf)].map(([match, events]) => [
      match,
      events.reduce((sum, { id }) => sum + anglersOf.get(id)!, 0),
    ]),
  );
  const fields = matches
    .map((event) => {
      const anglers = anglersOf.get(event.id)!;
      const whole = wholeField.get(matchOf(event))!;
      return {
        water: event.water,
        anglers,
        places: anglers === whole ? event.framePlaces : (event.framePlaces * anglers) / whole,
      };
    })
    .filter(({ anglers }) => anglers > 0);
  const here = fields.filter((field) => field.water === water);
  const used = here.length > 0 ? here : fields;
  if (used.length === 0) return null;
  const middle = (values: readonly number[]) => Math.max(1, Math.round(quantile(values, 0.5)));
  const anglers = middle(used.map((field) => field.anglers));
  return { anglers, places: Math.min(anglers, middle(used.map(({ places }) => places))) };
}

/** How many fished each event, as stated or counted; 0 where only the places are listed and nothing is stated. */
function anglersByEvent(venue: RatedVenue, events: RatedVenue['events']): ReadonlyMap<string, number> {
  const fished = Map.groupBy(
    venue.sessions.filter(({ status }) => status !== 'absent'),
    (session) => session.event,
  );
  return new Map(
    events.map((event) => [
      event.id,
      event.fished ?? (event.listing === 'full' ? (fished.get(event.id)?.length ?? 0) : 0),
    ]),
  );
}
