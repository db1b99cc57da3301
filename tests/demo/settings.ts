import type { Day } from '../../src/domain/day.ts';
import type { VenueSettings } from '../../src/domain/venue.ts';
import { FEATURES } from './ground/feature-words.ts';
import { RULES } from './rules.ts';

const GRAMS_PER_OUNCE = 28.349523125;

/** What `venue.md` of a generated venue says. Everything in it is invented; the numbers are kept for drama. */
export function demoSettings(guideDay: Day): VenueSettings {
  return {
    name: 'Osierholt Fishery',
    club: 'Osierholt Angling Society',
    invented: true,
    language: 'en',
    guideDay,
    contacts: [
      { role: 'Bailiff on duty', phone: '01632 960184' },
      { role: 'Match organiser', phone: '01632 960127', email: 'matches@osierholt.example' },
      { role: 'Secretary', email: 'secretary@osierholt.example' },
    ],
    emergency: {
      number: '999',
      alsoNumber: '112',
      textNumber: '999',
      nearestTown: 'Gedmarsh',
      powerNumber: '105',
      pollutionNumber: '0800 80 70 60',
      directions:
        'Off Brick Lane: by day the Brick Lane gate to the lodge, the Kiln car park or the Drove gate for Kiln Pool; at night only the Kiln car park gate stands open.',
    },
    units: { length: 'm', weight: 'lb' },
    bagParts: [
      { id: 'silvers', name: 'Silvers', species: ['roach', 'rudd', 'skimmer', 'bream', 'perch', 'hybrid'] },
      { id: 'carp', name: 'Carp', species: ['common carp', 'mirror carp', 'F1'] },
    ],
    features: FEATURES,
    standOff: { metres: 30, conductorSpreadMetres: 2, mapErrorMetres: 3 },
    linesSurveyed: {
      on: '2026-03-14',
      by: 'Secretary',
      how: 'walked round all three waters with the network operator’s plan in hand',
    },
    permittedReach: { poleMetres: 16, castMetres: 40, sectorDegrees: 90 },
    inspection: { hazardDays: 28, platformDays: 90, clearanceDays: 180, rescueKitDays: 28, linesDays: 365 },
    riskBands: [
      { from: 1, name: 'low', meaning: 'Keep an eye on it.' },
      { from: 5, name: 'moderate', meaning: 'Act when the bank is next worked on; tell anglers.' },
      { from: 10, name: 'high', meaning: 'Act within the month; tell anglers at the draw.', actWithinDays: 30 },
      { from: 17, name: 'very high', meaning: 'The peg comes out of the draw until it is dealt with.', closes: true },
    ],
    thresholds: [],
    ratingRules: { scaleDivisionGrams: GRAMS_PER_OUNCE, countChosenPegs: false },
    nestingMonths: [3, 4, 5, 6, 7, 8],
    rulesMarkdown: RULES,
  };
}
