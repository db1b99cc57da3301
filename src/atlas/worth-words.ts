import type { Evidence } from '../ratings/ratings.ts';
import type { Say } from '../words/say.ts';
import type { AxisWorth } from './drawing/worth-axis.ts';

/** A worth as it is written anywhere in the guide, with the numbers behind it for a drawing. */
export interface WorthWords {
  readonly shown: AxisWorth;
  /** `0.82` */
  readonly middle: string;
  /** `0.66` */
  readonly low: string;
  /** `1.02` */
  readonly high: string;
  readonly sessions: number;
  readonly evidence: Evidence;
}

/** A worth with its interval in words; multiples of par to two places. */
export function worthWords(shown: AxisWorth, sessions: number): WorthWords {
  return {
    shown,
    middle: shown.value.toFixed(2),
    low: shown.low.toFixed(2),
    high: shown.high.toFixed(2),
    sessions,
    evidence: shown.evidence,
  };
}

/** Nearer to par than this is no difference worth a word. */
const LIKE_PAR = 0.05;

/** A multiple of par as people say it: `about 40% below an average peg`, `much like an average peg`, `about 2.4 average pegs`. */
export function parWords(value: number, say: Say): string {
  if (value >= 1.95) return say('worth.averagePegs', { pegs: value.toFixed(1) });
  const percent = Math.round(Math.abs(value - 1) * 20) * 5;
  if (Math.abs(value - 1) < LIKE_PAR || percent === 0) return say('worth.alike');
  return say(value < 1 ? 'worth.below' : 'worth.above', { percent });
}

/** What an evidence word rests on at a peg in a month: `fair evidence: 2 sessions here and its features`. */
export function evidenceWords(evidence: Evidence, sessions: number, say: Say): string {
  return say(`evidence.${evidence}`, { here: say('evidence.sessionsHere', { sessions }) });
}

/** `1 session`, `14 sessions`. */
export function sessionsWords(sessions: number): string {
  return sessions === 1 ? '1 session' : `${sessions.toLocaleString('en-GB')} sessions`;
}

/** A year of worth as the text alternative of its drawing: every month with its interval. */
export function yearSentence(
  of: string,
  months: readonly { readonly name: string; readonly known: WorthWords | null }[],
): string {
  const told = months.map(({ name, known }) =>
    known === null ? `${name} not known` : `${name} ${known.middle} (${known.low} to ${known.high})`,
  );
  return `${of} through the year, in multiples of par: ${told.join(', ')}.`;
}
