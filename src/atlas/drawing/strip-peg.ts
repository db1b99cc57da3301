import type { FeatureSign } from './feature-sign.ts';
import { escapeMarkup } from './svg-markup.ts';
import type { AxisWorth } from './worth-axis.ts';

/** How far out the bed is drawn, nearest first: a short whip, and the pole at three of its lengths. */
export const STRIP_LINES_METRES = [2, 6, 11, 13] as const;

/** One peg of a strip of bank. */
export interface StripPeg {
  readonly peg: string;
  readonly href: string;
  /** Said to who cannot see the strip: "Peg 23, 1.35 m at 11 m, 2 hazards". */
  readonly label: string;
  readonly closed: boolean;
  /** The peg's facts as JSON where that changes with the day. */
  readonly dated?: string | undefined;
  /** Below datum at each of the strip's distances; 0 on land, null where nobody has plumbed. */
  readonly depthsMetres: readonly (number | null)[];
  /** The depth at 11 m as it is written; empty where it is not known. */
  readonly figure: string;
  /** Current hazards; those of a hard rule are drawn heavier. */
  readonly hazards: readonly { readonly hardRule: boolean }[];
  readonly features: readonly FeatureSign[];
  /** January first; null of a peg that is closed on every day, which sells nothing. */
  readonly worths: readonly (AxisWorth | null)[] | null;
  /** Along the bank to the next peg of the strip; null of the last. */
  readonly gapMetres: number | null;
}

/** The attributes by which a drawn peg follows the day of reading; none where nothing changes with it. */
export function datedMark({ peg, dated }: Pick<StripPeg, 'peg' | 'dated'>): string {
  if (dated === undefined) return '';
  return ` data-verdict="${escapeMarkup(dated)}" data-closed-class="b-closed" data-label="${escapeMarkup(peg)}"`;
}

const UNITS_PER_METRE = 2.2;
/** Two signs, and a finger, find room between pegs that stand closer. */
const MIN_GAP = 40;
const MAX_GAP = 84;
/** Room at the left end for the scales and the names of the lines, at the right for half a gap. */
const START = 50;
const END = 26;

/** Whether the bank between a peg and the next is drawn shortened, so that its bed is not joined. */
export function isFolded(gapMetres: number): boolean {
  return gapMetres * UNITS_PER_METRE > MAX_GAP;
}

/** Where each peg of a strip stands, from its left end, and how long the strip is. */
export function placeAlong(pegs: readonly StripPeg[]): { readonly xs: readonly number[]; readonly width: number } {
  const xs: number[] = [];
  let x = START;
  for (const { gapMetres } of pegs) {
    xs.push(x);
    x += Math.round(Math.min(MAX_GAP, Math.max(MIN_GAP, (gapMetres ?? 0) * UNITS_PER_METRE)));
  }
  return { xs, width: (xs.at(-1) ?? 0) + END };
}
