import type { Day } from './day.ts';
import type { RiskLevel } from './hazard.ts';
import type { LatLng } from './place.ts';

/** What one line of a bank round tells. A peg visited has a `visit` row, and a row more for each finding. */
export type RoundEntryKind =
  | 'visit'
  | 'hazard-found'
  | 'hazard-checked'
  | 'hazard-cleared'
  | 'clearance'
  | 'snag-removed'
  | 'cut'
  | 'line-distance'
  | 'gauge';

export interface RoundEntry {
  readonly entry: RoundEntryKind;
  readonly water: string;
  /** Empty for a gauge reading of the whole water. */
  readonly peg?: string;
  readonly status?: 'open' | 'closed';
  readonly platform?: string;
  readonly hazard?: string;
  readonly place?: string;
  readonly action?: string;
  readonly severity?: RiskLevel;
  readonly likelihood?: RiskLevel;
  readonly clearWidthMetres?: number;
  readonly lowestBranchMetres?: number;
  readonly pathWidthMetres?: number;
  readonly lineDistanceMetres?: number;
  readonly levelMetres?: number;
  readonly waterDegreesC?: number;
  readonly at?: LatLng;
  readonly note?: string;
}

/** One walk of the bailiff, with what was found at each peg. */
export interface BankRound {
  /** Opaque reference, part of the file's name: `rounds/2026-11-12-k7q2.csv`. */
  readonly ref: string;
  readonly day: Day;
  readonly entries: readonly RoundEntry[];
  readonly file: string;
}
