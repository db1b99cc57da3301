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
  /** The role that found it, never a name. */
  readonly foundBy?: string;
  /** When it was last found worse than before: the score is of that day. */
  readonly worsenedOn?: Day;
  /** When the control was put in place. */
  readonly controlledOn?: Day;
  /** The role that decided that it is cleared, never a name, and why; a hard rule is not cleared without them. */
  readonly clearedBy?: string;
  readonly clearedWhy?: string;
  /** Picture below `photos/` that shows it cleared. */
  readonly clearedPhoto?: string;
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

/** Whether a hazard still exists: nobody has found it gone. */
export function isCurrent({ clearedOn }: Pick<Hazard, 'clearedOn'>): boolean {
  return clearedOn === undefined;
}

/** A hazard that is at no peg: on a stretch of path, at a gate, a car park or a piece of rescue kit, or of the whole water. */
export interface PlaceHazard extends Hazard {
  /** Id, on the water's map, of the path or place it is at; left out where it is of the whole water. */
  readonly mappedAs?: string;
}
