import type { Peg } from '../../src/domain/peg.ts';
import type { Venue, VenueSettings } from '../../src/domain/venue.ts';

/** Settings of a small invented venue, for tests of the rooms that take a checked `Venue`. */
export const EXAMPLE_SETTINGS: VenueSettings = {
  name: 'Example Fishery',
  club: 'Example Angling Club',
  invented: true,
  guideDay: '2026-11-21',
  contacts: [],
  emergency: { number: '999', powerNumber: '105' },
  units: { length: 'm', weight: 'lb' },
  language: 'en',
  bagParts: [
    { id: 'silvers', name: 'Silvers', species: ['roach'] },
    { id: 'carp', name: 'Carp', species: ['common carp'] },
  ],
  features: [{ id: 'corner', name: 'Corner' }],
  standOff: { metres: 30, conductorSpreadMetres: 2, mapErrorMetres: 3 },
  permittedReach: { poleMetres: 16, castMetres: 40, sectorDegrees: 120 },
  inspection: { hazardDays: 28, platformDays: 90, clearanceDays: 180, rescueKitDays: 28, linesDays: 365 },
  riskBands: [
    { from: 1, name: 'low', meaning: 'no more to do' },
    { from: 5, name: 'moderate', meaning: 'mend when next there' },
    { from: 10, name: 'high', meaning: 'mend soon' },
    { from: 17, name: 'very high', meaning: 'close until mended' },
  ],
  thresholds: [],
  ratingRules: { scaleDivisionGrams: 28.349523125, countChosenPegs: false },
  nestingMonths: [3, 4, 5, 6, 7, 8],
  rulesMarkdown: '',
};

/** A peg of the example water; change what a test is about. */
export function examplePeg(peg: string, changes: Partial<Peg> = {}): Peg {
  return {
    water: 'pit',
    peg,
    at: { lat: 52.75, lng: -0.05 },
    facingDegrees: 0,
    features: [],
    status: 'open',
    reach: [],
    limits: {},
    hazards: [],
    photos: [],
    notes: [],
    file: `pegs/pit/${peg}.md`,
    ...changes,
  };
}

/** A venue of one square water of about 110 m by 67 m. */
export function exampleVenue(changes: Partial<Venue> = {}): Venue {
  return {
    settings: EXAMPLE_SETTINGS,
    waters: [
      {
        id: 'pit',
        name: 'The Pit',
        kind: 'clay pit',
        datum: 'top of the sill',
        closeSeason: 'none',
        notesMarkdown: '',
        map: {
          outline: [
            { lat: 52.75, lng: -0.051 },
            { lat: 52.751, lng: -0.051 },
            { lat: 52.751, lng: -0.05 },
            { lat: 52.75, lng: -0.05 },
          ],
          islands: [],
          overheadLines: [],
          paths: [],
          places: [],
          areas: [],
        },
      },
    ],
    pegs: [examplePeg('1')],
    events: [],
    sessions: [],
    notices: [],
    rounds: [],
    soundings: [],
    gauge: [],
    ...changes,
  };
}
