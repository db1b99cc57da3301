import type { Units } from './bag.ts';
import { parseLength } from './length.ts';

/** Deeper than any stillwater peg: a slip of the thumb. */
const DEEPEST_METRES = 30;
/** Less is no depth that anybody plumbs. */
const SHALLOWEST_METRES = 0.01;
/** A plumb and a sounding beside it agree within this: the bed is uneven, the water stands higher or lower (our own choice). */
const NEAR_METRES = 0.3;
/** And by so much more for each metre to the nearest sounding, since between soundings the bed is guessed (our own choice). */
const A_METRE_OFF = 0.05;

/**
 * Whether what an angler plumbed is so far from what the survey has there that somebody should be asked: another line, another
 * unit, a hole, or a bed that has silted up.
 */
export function isFarFromSurvey(plumbedMetres: number, surveyedMetres: number, nearestSoundingMetres: number): boolean {
  return Math.abs(plumbedMetres - surveyedMetres) > NEAR_METRES + A_METRE_OFF * nearestSoundingMetres;
}

/** A depth as an angler types it, in metres; or why it is none, with the way to mend it. */
export function readPlumbed(
  typed: string,
  unit: Units['length'],
): { readonly ok: true; readonly metres: number } | { readonly ok: false; readonly why: string } {
  const read = parseLength(typed, unit);
  if (!read.ok) return { ok: false, why: `Expected ${read.expected}. ${read.mend}` };
  return isPlumbable(read.value)
    ? { ok: true, metres: read.value }
    : { ok: false, why: `Expected a depth between 0 and ${DEEPEST_METRES} m.` };
}

/** Whether a depth can be one of a stillwater peg. */
export function isPlumbable(metres: number): boolean {
  return metres >= SHALLOWEST_METRES && metres <= DEEPEST_METRES;
}
