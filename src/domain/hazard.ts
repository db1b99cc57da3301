import type { Day } from './day.ts';

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
}
