import type { Water } from '../domain/map.ts';
import type { Peg, PegKey } from '../domain/peg.ts';
import type { Venue, VenueSettings } from '../domain/venue.ts';

/** What they read of a peg. */
export type RatedPeg = Pick<Peg, 'water' | 'peg' | 'features' | 'datedFeatures' | 'since' | 'moved' | 'retired'>;

type RatedWater = Pick<Water, 'id' | 'name' | 'stocked' | 'netted'>;

/** What the ratings read of a venue, and nothing else: a notice or a hazard more leaves every worth as it was. */
export interface RatedVenue {
  readonly settings: Pick<VenueSettings, 'bagParts' | 'features' | 'ratingRules'>;
  readonly waters: readonly RatedWater[];
  readonly pegs: readonly RatedPeg[];
  /** Stands that are no longer fished: their log still informs features and anglers. */
  readonly retired?: readonly RatedPeg[];
  readonly events: Venue['events'];
  readonly sessions: Venue['sessions'];
  /** What the map and the soundings say of each peg, where they do. */
  readonly ground?: Readonly<Record<PegKey, PegGround>>;
}

/** Depths below datum, in metres; null where not plumbed. */
export interface GroundDepths {
  readonly atMarginMetres: number | null;
  readonly at6Metres: number | null;
  readonly at13Metres: number | null;
}

/** What the ratings ask of a peg's ground, as it lies today. */
export interface PegGround {
  /** Open water into the wind from each of sixteen directions, from north on clockwise, in metres. */
  readonly fetchMetres?: readonly number[];
  /** Depth below datum down the edge and on the pole lines straight out; null where not plumbed. */
  readonly depths?: GroundDepths;
}

/** The part of a venue that its ratings depend on, as plain data. */
export function ratedVenue(venue: RatedVenue): RatedVenue {
  const { bagParts, features, ratingRules } = venue.settings;
  return {
    settings: { bagParts, features, ratingRules },
    waters: venue.waters.map(ratedWater),
    pegs: venue.pegs.map(ratedPeg),
    retired: (venue.retired ?? []).map(ratedPeg),
    events: venue.events,
    sessions: venue.sessions,
    ...(venue.ground === undefined ? {} : { ground: venue.ground }),
  };
}

/** The same with nothing a club may word otherwise without having fished: names are ids. A new word refits nothing. */
export function withoutWords(venue: RatedVenue): RatedVenue {
  const { bagParts, features, ratingRules } = venue.settings;
  return {
    ...venue,
    settings: {
      bagParts: bagParts.map((part) => ({ ...part, name: part.id, species: [] })),
      features: features.map(({ id }) => ({ id, name: id })),
      ratingRules,
    },
    waters: venue.waters.map((water) => ({ ...water, name: water.id })),
  };
}

function ratedWater({ id, name, stocked = [], netted = [] }: RatedWater): RatedWater {
  return { id, name, stocked, netted };
}

function ratedPeg({ water, peg, features, datedFeatures, since, moved, retired }: RatedPeg): RatedPeg {
  return {
    water,
    peg,
    features,
    ...(datedFeatures === undefined ? {} : { datedFeatures }),
    ...(since === undefined ? {} : { since }),
    ...(moved === undefined ? {} : { moved }),
    ...(retired === undefined ? {} : { retired }),
  };
}
