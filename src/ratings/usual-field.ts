import { quantile } from './quantile.ts';
import type { RatedVenue } from './rated-venue.ts';

/** How many usually fish a match of a water, and how many of them frame. */
export interface UsualField {
  readonly anglers: number;
  readonly places: number;
}

/**
 * The middle field and the middle number of places of a water's matches; of the venue's, where the water had none. Null
 * where the log holds no match with a known field.
 */
export function usualField(venue: RatedVenue, water: string): UsualField | null {
  const fished = Map.groupBy(
    venue.sessions.filter(({ status }) => status !== 'absent'),
    (session) => session.event,
  );
  const fields = venue.events
    .filter((event) => event.kind === 'match')
    .map((event) => ({
      water: event.water,
      anglers: event.fished ?? (event.listing === 'full' ? (fished.get(event.id)?.length ?? 0) : 0),
      places: event.framePlaces,
    }))
    .filter(({ anglers }) => anglers > 0);
  const here = fields.filter((field) => field.water === water);
  const used = here.length > 0 ? here : fields;
  if (used.length === 0) return null;
  const middle = (values: readonly number[]) => Math.max(1, Math.round(quantile(values, 0.5)));
  const anglers = middle(used.map((field) => field.anglers));
  return { anglers, places: Math.min(anglers, middle(used.map(({ places }) => places))) };
}
