import type { Evidence } from '../ratings/ratings.ts';
import type { AxisReturn } from './drawing/return-axis.ts';

/** A return as it is written anywhere in the guide, with the numbers behind it for a drawing. */
export interface ReturnWords {
  readonly shown: AxisReturn;
  /** `0.82` */
  readonly middle: string;
  /** `0.66` */
  readonly low: string;
  /** `1.02` */
  readonly high: string;
  readonly sessions: number;
  readonly evidence: Evidence;
}

/** A return with its interval in words; multiples of par to two places. */
export function returnWords(shown: AxisReturn, sessions: number): ReturnWords {
  return {
    shown,
    middle: shown.value.toFixed(2),
    low: shown.low.toFixed(2),
    high: shown.high.toFixed(2),
    sessions,
    evidence: shown.evidence,
  };
}

/** `1 session`, `14 sessions`. */
export function sessionsWords(sessions: number): string {
  return sessions === 1 ? '1 session' : `${sessions.toLocaleString('en-GB')} sessions`;
}

/** A year of returns as the text alternative of its drawing: every month with its interval. */
export function yearSentence(
  of: string,
  months: readonly { readonly name: string; readonly known: ReturnWords | null }[],
): string {
  const told = months.map(({ name, known }) =>
    known === null ? `${name} not known` : `${name} ${known.middle} (${known.low} to ${known.high})`,
  );
  return `${of} through the year, in multiples of par: ${told.join(', ')}.`;
}
