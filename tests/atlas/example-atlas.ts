import { type Atlas, makeAtlas } from '../../src/atlas/atlas.ts';
import { NO_RATINGS } from '../../src/atlas/no-ratings.ts';
import type { Venue } from '../../src/domain/venue.ts';
import type { PegSurvey, Survey, WaterSurvey } from '../../src/ground/survey.ts';
import type { ModelSummary, Ratings } from '../../src/ratings/ratings.ts';
import { exampleVenue } from '../domain/example-venue.ts';

export const EXAMPLE_MODEL: ModelSummary = {
  sd: { event: 0.8, angler: 0.25, peg: 0.15, feature: 0.05, featureMonth: 0.2, residual: 0.6 },
  logMarginal: -1234.5,
  sessions: 1000,
  censored: 80,
};

/** Ratings that say nothing; change what a test is about. */
export const EMPTY_RATINGS: Ratings = {
  ...NO_RATINGS,
  bags: [{ bag: 'total', featureMonths: [], pegs: [], pegMonths: [], model: EXAMPLE_MODEL }],
  dnwLesson: { mechanism: null, why: 'all-weighed' },
};

export const EXAMPLE_PEG_SURVEY: PegSurvey = {
  gridReference: 'TF 3127 1880',
  standOffs: [],
  lines: [],
  reach: [],
  neighbours: [],
  lineDepths: [],
  profile: [],
  sun: [],
  wind: [],
  walks: [],
  wayPaths: null,
  accessFindings: [],
  gates: { best: null, atNight: null, lockedNearer: null },
  nearestAed: null,
  nearestThrowLine: null,
  edgeMetres: 0.5,
  facesWater: true,
};

export const EXAMPLE_WATER_SURVEY: WaterSurvey = {
  areaSquareMetres: 7400,
  depth: null,
  level: null,
  timeZone: 'Europe/London',
};

/** An atlas of the example venue with every part a test may change. */
export function exampleAtlas(
  changes: {
    readonly venue?: Partial<Venue>;
    readonly peg?: Partial<PegSurvey>;
    readonly water?: Partial<WaterSurvey>;
    readonly ratings?: Partial<Ratings>;
  } = {},
): Atlas {
  const venue = exampleVenue(changes.venue);
  const survey: Survey = {
    waters: Object.fromEntries(venue.waters.map(({ id }) => [id, { ...EXAMPLE_WATER_SURVEY, ...changes.water }])),
    pegs: Object.fromEntries(
      venue.pegs.map(({ water, peg }) => [`${water}/${peg}`, { ...EXAMPLE_PEG_SURVEY, ...changes.peg }]),
    ),
  };
  return makeAtlas(venue, survey, { ...EMPTY_RATINGS, ...changes.ratings });
}

/** An atlas of a venue as it is, surveyed by nobody. */
export function atlasOf(venue: Venue): Atlas {
  return exampleAtlas({ venue });
}
