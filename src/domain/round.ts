import type { MeasuredClearance } from './clearance-measures.ts';
import type { Day } from './day.ts';
import type { RiskLevel } from './hazard.ts';
import type { LatLng } from './place.ts';

/**
 * What one line of a bank round tells. A peg visited has a `visit` row, and a row more for each finding; a visit alone says
 * that somebody was there, not that anything was inspected.
 */
export type RoundEntryKind =
  | 'visit'
  | 'inspected'
  | 'hazard-found'
  | 'hazard-checked'
  | 'hazard-worsened'
  | 'hazard-controlled'
  | 'hazard-cleared'
  | 'clearance'
  | 'snag-removed'
  | 'cut'
  | 'line-distance'
  | 'kit-checked'
  | 'closing'
  | 'notice'
  | 'note'
  | 'gauge';

/** How a piece of rescue kit was found. */
export type KitState = 'in-place' | 'damaged' | 'missing';

export interface RoundEntry extends MeasuredClearance {
  readonly entry: RoundEntryKind;
  readonly water: string;
  /** Left out for what is at no peg. */
  readonly peg?: string;
  /** Id, on the water's map, of the path or place it is at. */
  readonly mappedAs?: string;
  /** The day it was seen; the round's own where left out. */
  readonly day?: Day;
  /** The role that walked, never a name. */
  readonly by?: string;
  readonly status?: 'open' | 'closed';
  readonly platform?: string;
  readonly hazard?: string;
  readonly place?: string;
  readonly action?: string;
  readonly severity?: RiskLevel;
  readonly likelihood?: RiskLevel;
  readonly severityAfter?: RiskLevel;
  readonly likelihoodAfter?: RiskLevel;
  /** The day a hazard that was looked at had been found. */
  readonly foundOn?: Day;
  /** What was done about a hazard. */
  readonly control?: string;
  /** Why it is closed, or was cleared. */
  readonly why?: string;
  /** Last day of a closing or a notice; open-ended where left out. */
  readonly until?: Day;
  readonly title?: string;
  readonly kit?: KitState;
  readonly lineDistanceMetres?: number;
  readonly levelMetres?: number;
  readonly waterDegreesC?: number;
  readonly at?: LatLng;
  /** How good the phone said its position was. */
  readonly accuracyMetres?: number;
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
