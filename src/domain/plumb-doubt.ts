/** Deeper than any stillwater peg: a slip of the thumb. */
export const DEEPEST_METRES = 30;
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
