import type { PegKey } from '../domain/peg.ts';
import type { SessionStatus } from '../domain/session.ts';

/** How a peg ended its match. `unlisted` is of published lists only: the organiser knows everybody. */
export type WeighedStatus = Exclude<SessionStatus, 'unlisted'>;

/** What each ending is called on the scales, and what it means for places and for the log. */
export const STATUS_WORDS: Readonly<Record<WeighedStatus, { readonly name: string; readonly means: string }>> = {
  weighed: { name: 'Weighed', means: 'has a weight, and counts' },
  blank: { name: 'Blank', means: 'weighed in with nothing; the log knows that little was caught' },
  dnw: { name: 'DNW', means: 'fished and did not weigh; the log takes it as a low bag, not as nothing' },
  absent: { name: 'Absent', means: 'drew, or was to draw, and did not fish; the log says nothing of the peg' },
  disqualified: { name: 'Disqualified', means: 'fished, and does not count; the log says nothing of the weight' },
};

/** One peg of a match when the scales have been there. */
export interface WeighedIn {
  readonly section: string;
  readonly peg: PegKey;
  readonly status: WeighedStatus;
  /** Of `weighed`: all nets together. */
  readonly grams: number;
}

/**
 * What counts for a place: nought for a blank and for who did not weigh; null for who did not fish or does not count. To the
 * milligram, below anything a scale shows: the same drams in other nets add up to another last digit, and are a tie all the same.
 */
export function countedGrams({ status, grams }: WeighedIn): number | null {
  if (status === 'weighed') return Math.round(grams * 1000) / 1000;
  return status === 'blank' || status === 'dnw' ? 0 : null;
}
