import type { Day } from './day.ts';
import type { Peg, PegKey } from './peg.ts';

/** `planned`: pegs may still change. `fished`: it is in the log, or will be. */
export type MatchStatus = 'planned' | 'fished';

/**
 * The club's rule for end pegs: pegs with one of these features, or with nobody within so many metres along the bank on one
 * hand. `any`: like all others; `one-a-section`: at most one in each section; `left-out`: not in the match.
 */
export interface EndRule {
  readonly rule: 'any' | 'one-a-section' | 'left-out';
  readonly features: readonly string[];
  readonly gapMetres?: number;
}

/** How the club decides a match; `match-day/` works it out. */
export interface Scoring {
  /** `weight`: the heaviest bag wins. `points`: the best of the sections first, the heavier bag ahead among equals. */
  readonly overall: 'weight' | 'points';
  /** `low`: a section's winner has 1 point; `high`: as many as the section has pegs. */
  readonly count: 'low' | 'high';
  /** Of equal weights: the mean of the places they take up, or all the better place. */
  readonly ties: 'share' | 'same';
  /** Blank and DNW: like any tie, or the last place of the section. */
  readonly noWeight: 'share' | 'last';
}

/** Where a match's file does not say (common practice, no source). */
export const USUAL_SCORING: Scoring = { overall: 'weight', count: 'low', ties: 'share', noWeight: 'last' };

/** A section of a match and its pegs in their order along the bank. */
export interface MatchSection {
  /** A capital letter, `A` first. */
  readonly name: string;
  readonly pegs: readonly PegKey[];
}

/** A match of the club, before it is fished and after. */
export interface Match {
  /** The file's name without ending: `2026-12-06-winter-three`. */
  readonly id: string;
  readonly name: string;
  readonly day: Day;
  readonly waters: readonly string[];
  readonly entries: number;
  /** How many sections. */
  readonly sections: number;
  /** Least distance between two pegs along the bank. */
  readonly apartMetres: number;
  /** Entries that need a peg free of steps. */
  readonly stepFree: number;
  readonly ends: EndRule;
  /** Pegs the organiser leaves out, whatever the plan would say. */
  readonly leaveOut: readonly PegKey[];
  /** How many places frame. */
  readonly places: number;
  readonly scoring: Scoring;
  /** Parts of the pot for each framing place, the winner's first; empty where the club says nothing of it. */
  readonly pot: readonly number[];
  /** The members agreed that their names stand on printed results; they never stand in the guide. */
  readonly namesAgreed: boolean;
  /** Clock times as the club writes them: `08:30`. */
  readonly draw?: string;
  readonly allIn?: string;
  readonly allOut?: string;
  readonly status: MatchStatus;
  /** Empty until it is planned. */
  readonly plan: readonly MatchSection[];
  /** Pegs of the plan kept for those who need one free of steps: not in the bag. */
  readonly kept: readonly PegKey[];
  readonly markdown: string;
}

/** The name of a section by its number, 0 for `A`; after `Z` comes `AA`. */
export function sectionName(index: number): string {
  const letter = String.fromCharCode(65 + (index % 26));
  return index < 26 ? letter : sectionName(Math.floor(index / 26) - 1) + letter;
}

/** Hours between all in and all out; null where either is not known. */
export function hoursFished({ allIn, allOut }: Pick<Match, 'allIn' | 'allOut'>): number | null {
  if (allIn === undefined || allOut === undefined) return null;
  const hours = (text: string) => Number(text.slice(0, 2)) + Number(text.slice(3)) / 60;
  const between = hours(allOut) - hours(allIn);
  return between > 0 ? between : between + 24;
}

/** Whether the record says that a peg is reached without a step. Silence is no: nobody is sent to a peg on a guess. */
export function isStepFree({ access }: Pick<Peg, 'access'>): boolean {
  return access?.stepFree === true || access?.accessible === true;
}
