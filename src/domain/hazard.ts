import type { Day } from './day.ts';
import type { KeptOpen } from './peg-verdict.ts';

/** Severity or likelihood on the 5 × 5 consequence/likelihood matrix (ISO 31010), 1 lowest. */
export type RiskLevel = 1 | 2 | 3 | 4 | 5;

export interface Hazard {
  /** A word of `HAZARD_KINDS` (hazard-kinds.ts). */
  readonly kind: string;
  /** Where in the swim. */
  readonly place: string;
  /** What the angler should do; the kind's own advice where left out. */
  readonly action?: string;
  /** What the club has done about it. */
  readonly control?: string;
  readonly severity: RiskLevel;
  readonly likelihood: RiskLevel;
  readonly severityAfter?: RiskLevel;
  readonly likelihoodAfter?: RiskLevel;
  readonly foundOn: Day;
  readonly checkedOn?: Day;
  readonly clearedOn?: Day;
  /** The bank round that found it. */
  readonly round?: string;
  readonly photo?: string;
  /** Of an overhead line that is on the map: its name or id there, and then the map's distance counts. */
  readonly line?: string;
  /** Of an overhead line: along the ground from the platform to below its nearest wire. */
  readonly distanceMetres?: number;
  /** Of an overhead line: where its nearest point lies, degrees clockwise from true north. */
  readonly bearingDegrees?: number;
  /** Who decided that the peg stays in the draw in spite of it, and why; of no effect for an overhead line. */
  readonly keptOpen?: KeptOpen;
}
