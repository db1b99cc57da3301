import type { Day } from '../domain/day.ts';
import type { Water } from '../domain/map.ts';
import type { Peg } from '../domain/peg.ts';
import type { Venue, VenueSettings } from '../domain/venue.ts';

/** What the ratings read of a venue, and nothing else: a notice or a hazard more leaves every return as it was. */
export interface RatedVenue {
  readonly settings: Pick<VenueSettings, 'bagParts' | 'features' | 'ratingRules'>;
  readonly waters: readonly (Pick<Water, 'id' | 'name'> & { readonly stocked?: readonly { readonly on: Day }[] })[];
  readonly pegs: readonly Pick<Peg, 'water' | 'peg' | 'features'>[];
  readonly events: Venue['events'];
  readonly sessions: Venue['sessions'];
}

/** The part of a venue that its ratings depend on, as plain data. */
export function ratedVenue(venue: RatedVenue): RatedVenue {
  const { bagParts, features, ratingRules } = venue.settings;
  return {
    settings: { bagParts, features, ratingRules },
    waters: venue.waters.map(({ id, name }) => ({ id, name })),
    pegs: venue.pegs.map(({ water, peg, features: carried }) => ({ water, peg, features: carried })),
    events: venue.events,
    sessions: venue.sessions,
  };
}
