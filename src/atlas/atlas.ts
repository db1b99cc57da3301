import type { Water } from '../domain/map.ts';
import { type Peg, type PegKey, pegKey } from '../domain/peg.ts';
import type { FishingEvent, Session } from '../domain/session.ts';
import type { Venue } from '../domain/venue.ts';
import type { PegSurvey, Survey, WaterSurvey } from '../ground/survey.ts';
import type { ExpectedBag, FeatureMonth, PegMonth, Ratings } from '../ratings/ratings.ts';

/**
 * Everything the pages draw from: the venue as the club keeps it, what the ground gives, what the log gives, and the
 * same by peg and water, so that a page finds its own without a search through the whole. Plain data; made once a build.
 */
export interface Atlas {
  readonly venue: Venue;
  readonly survey: Survey;
  readonly ratings: Ratings;
  readonly watersById: ReadonlyMap<string, Water>;
  readonly pegsByKey: ReadonlyMap<PegKey, Peg>;
  /** In the order of the numbers on the posts: 2 before 10, 14 before 14a. */
  readonly pegsByWater: ReadonlyMap<string, readonly Peg[]>;
  readonly eventsById: ReadonlyMap<string, FishingEvent>;
  readonly sessionsByPeg: ReadonlyMap<PegKey, readonly Session[]>;
  /** Worth of the total bag by month. */
  readonly monthsByPeg: ReadonlyMap<PegKey, readonly PegMonth[]>;
  readonly bagsByPeg: ReadonlyMap<PegKey, readonly ExpectedBag[]>;
  /** Worth of the total bag by month. */
  readonly monthsByFeature: ReadonlyMap<string, readonly FeatureMonth[]>;
}

const byNumber = new Intl.Collator('en', { numeric: true });

/** Puts a checked venue, its survey and its ratings together. */
export function makeAtlas(venue: Venue, survey: Survey, ratings: Ratings): Atlas {
  const total = ratings.bags.find(({ bag }) => bag === 'total');
  const pegsInOrder = [...venue.pegs].sort((a, b) => byNumber.compare(a.peg, b.peg));
  const ofPeg = ({ water, peg }: { readonly water: string; readonly peg: string }) => pegKey(water, peg);
  return {
    venue,
    survey,
    ratings,
    watersById: new Map(venue.waters.map((water) => [water.id, water])),
    pegsByKey: new Map(venue.pegs.map((peg) => [ofPeg(peg), peg])),
    pegsByWater: Map.groupBy(pegsInOrder, ({ water }) => water),
    eventsById: new Map(venue.events.map((event) => [event.id, event])),
    sessionsByPeg: Map.groupBy(venue.sessions, ofPeg),
    monthsByPeg: Map.groupBy(total?.pegMonths ?? [], ofPeg),
    bagsByPeg: Map.groupBy(ratings.expectedBags, ofPeg),
    monthsByFeature: Map.groupBy(total?.featureMonths ?? [], ({ feature }) => feature),
  };
}

/** A water that a page names. Throws where there is none: pages are made from the atlas's own lists. */
export function waterOf(atlas: Atlas, water: string): Water {
  return found(atlas.watersById.get(water), `water ${water}`);
}

/** A peg that a page names. */
export function pegOf(atlas: Atlas, key: PegKey): Peg {
  return found(atlas.pegsByKey.get(key), `peg ${key}`);
}

/** What the ground gives for a peg. */
export function surveyOfPeg(atlas: Atlas, key: PegKey): PegSurvey {
  return found(atlas.survey.pegs[key], `survey of peg ${key}`);
}

/** What the ground gives for a water. */
export function surveyOfWater(atlas: Atlas, water: string): WaterSurvey {
  return found(atlas.survey.waters[water], `survey of water ${water}`);
}

function found<T>(value: T | undefined, what: string): T {
  if (value === undefined) throw new Error(`There is no ${what} in the atlas.`);
  return value;
}
