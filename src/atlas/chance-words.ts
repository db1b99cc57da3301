/** Chances nobody can tell from these are told as such. */
const RARE = 0.02;

/** Below this a chance is one in so many, above it so many in ten: 1 in 3 is less than 4 in 10, 1 in 2 would be more. */
const LARGEST_ONE_IN = 0.35;

/**
 * A chance as people say it: `1 in 6`, from more than a third on as `7 in 10`; `fewer than 1 in 50` and `nearly always` at
 * the ends, where a figure would claim more than the log can know. A larger chance is never told as a smaller one.
 * @param chance 0 to 1
 */
export function chanceWords(chance: number): string {
  if (chance < RARE) return 'fewer than 1 in 50';
  if (chance > 0.97) return 'nearly always';
  if (chance < LARGEST_ONE_IN) return `1 in ${Math.round(1 / chance)}`;
  const tenths = Math.round(chance * 10);
  return tenths >= 10 ? '19 in 20' : `${tenths} in 10`;
}
