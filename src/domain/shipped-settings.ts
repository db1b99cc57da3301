import type { Month } from './day.ts';
import type { PermittedReach } from './peg.ts';
import type { Emergency, InspectionIntervals, RatingRules, RiskBand, StandOffRule } from './venue.ts';
import { GRAMS_PER_OUNCE } from './weight.ts';

/** Below this no venue may go (Energy Networks Association, angling safety release: at least 30 m from any overhead line). */
export const MIN_STAND_OFF_METRES = 30;

/** What holds where `venue.md` says nothing. The spread and the map error are this project's choice. */
export const SHIPPED_STAND_OFF: StandOffRule = {
  metres: MIN_STAND_OFF_METRES,
  conductorSpreadMetres: 2,
  mapErrorMetres: 3,
};

/** The longest pole the trade sells and a long feeder cast on a match lake (common practice, no source). */
export const SHIPPED_REACH: PermittedReach = { poleMetres: 16, castMetres: 40, sectorDegrees: 120 };

/** Walk-round monthly, platforms quarterly, clearance twice a year, the lines yearly (this project's choice: no published interval for fisheries). */
export const SHIPPED_INSPECTION: InspectionIntervals = {
  hazardDays: 28,
  platformDays: 90,
  clearanceDays: 180,
  rescueKitDays: 28,
  linesDays: 365,
};

/** Bands of the 5 × 5 matrix. ISO 31010:2019 leaves their bounds to the user; these are this project's choice. */
export const SHIPPED_RISK_BANDS: readonly RiskBand[] = [
  { from: 1, name: 'low', meaning: 'Keep an eye on it.' },
  { from: 5, name: 'moderate', meaning: 'Act when the bank is next worked on; tell anglers.' },
  { from: 10, name: 'high', meaning: 'Act within the month; tell anglers at the draw.', actWithinDays: 30 },
  { from: 17, name: 'very high', meaning: 'The peg comes out of the draw until it is dealt with.', closes: true },
];

/**
 * What goes with an emergency number where `venue.md` says no more: 112 reaches the same operators as 999 (UK practice,
 * from memory), and 999 takes messages from registered phones (emergencySMS, as fire service and NHS pages give it).
 */
export const SHIPPED_EMERGENCY: Readonly<Record<string, Pick<Emergency, 'alsoNumber' | 'textNumber'>>> = {
  '999': { alsoNumber: '112', textNumber: '999' },
};

/** Scales that read to the ounce; pegs that were chosen stay out of the ratings. */
export const SHIPPED_RATING_RULES: RatingRules = { scaleDivisionGrams: GRAMS_PER_OUNCE, countChosenPegs: false };

/** March to August, as the RSPB advises (second-hand). The law has no months: a nest in use is protected in any. */
export const SHIPPED_NESTING_MONTHS: readonly Month[] = [3, 4, 5, 6, 7, 8];
