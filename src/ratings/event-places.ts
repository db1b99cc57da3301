import type { FishingEvent, Session } from '../domain/session.ts';
import type { RatedVenue } from './rated-venue.ts';

/** A match with its weighed sessions, heaviest first. */
export interface EventPlaces {
  readonly event: FishingEvent;
  readonly weighed: readonly (Session & { readonly weightGrams: number })[];
}

/** Every match of the log in which anyone weighed, with its bags in order. Chosen pegs make no places. */
export function eventPlaces(venue: RatedVenue): EventPlaces[] {
  const sessions = Map.groupBy(venue.sessions, (session) => session.event);
  return venue.events
    .filter((event) => event.kind === 'match')
    .map((event) => ({ event, weighed: heaviestFirst(sessions.get(event.id) ?? []) }))
    .filter(({ weighed }) => weighed.length > 0);
}

function heaviestFirst(sessions: readonly Session[]): EventPlaces['weighed'] {
  return sessions
    .flatMap((session) =>
      session.status === 'weighed' && session.weightGrams !== undefined
        ? [{ ...session, weightGrams: session.weightGrams }]
        : [],
    )
    .sort((a, b) => b.weightGrams - a.weightGrams || (a.peg < b.peg ? -1 : 1));
}
