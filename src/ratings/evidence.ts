import type { Evidence } from './ratings.ts';

/** Above this share of the prior's standard deviation a worth is thin: the log removed less than half of the variance. */
export const THIN_ABOVE = Math.SQRT1_2;
/** Below this share it is solid: the log removed more than three quarters of the variance. */
export const SOLID_BELOW = 0.5;

/**
 * How much the log narrowed what was known of a worth before it: from the posterior standard deviation over the prior
 * standard deviation of the same contrast. A contrast that the prior already fixes has nothing to learn and reads thin.
 */
export function evidenceOf(posteriorSd: number, priorSd: number): Evidence {
  if (!(priorSd > 0)) return 'thin';
  const left = posteriorSd / priorSd;
  if (left > THIN_ABOVE) return 'thin';
  return left < SOLID_BELOW ? 'solid' : 'fair';
}

const BY_STRENGTH: readonly Evidence[] = ['thin', 'fair', 'solid'];

/** The weaker of two words. */
export function weaker(one: Evidence, other: Evidence): Evidence {
  return BY_STRENGTH.indexOf(one) < BY_STRENGTH.indexOf(other) ? one : other;
}
