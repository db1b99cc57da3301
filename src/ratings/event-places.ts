import { type FishingEvent, matchOf, type Session } from '../domain/session.ts';
import type { RatedVenue } from './rated-venue.ts';

/** A match on one water, or one water's part of a match over several. */
export interface EventPlaces {
  readonly event: FishingEvent;
  /** The weighed sessions of the whole match, heaviest first: its frame and its win are among these. */
  readonly weighed: readonly WeighedSession[];
}

type WeighedSession = Session & { readonly weightGrams: number };

/**
 * Every match of the log in which anyone weighed, with its bags in order, once for each water it was fished on. Chosen pegs make
 * no places.
 */
export function eventPlaces(venue: RatedVenue): EventPlaces[] {
  const events = venue.events.filter((event) => event.kind === 'match');
  const matches = new Map(events.map((event) => [event.id, matchOf(event)]));
  const sessions = Map.groupBy(venue.sessions, (session) => matches.get(session.event));
  const places = new Map(
    [...new Set(matches.values())].map((match) => [match, heaviestFirst(sessions.get(match) ?? [])]),
  );
  return events
    .map((event) => ({ event, weighed: places.get(matchOf(event))! }))
    .filter(({ weighed }) => weighed.length > 0);
}

function heaviestFirst(sessions: readonly Session[]): readonly WeighedSession[] {
  return sessions
    .flatMap((session) =>
      session.status === 'weighed' && session.weightGrams !== undefined
        ? [{ ...session, weightGrams: session.weightGrams }]
        : [],
    )
    .sort((a, b) => b.weightGrams - a.weightGrams || (a.peg < b.peg ? -1 : 1));
}
