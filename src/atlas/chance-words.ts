/** Chances nobody can tell from these are told as such. */
const RARE = 0.02;

/**
 * A chance as people say it: `1 in 6`, from even chances on as `7 in 10`; `fewer than 1 in 50` and `nearly always` at
 * the ends, where a figure would claim more than the log can know.
 * @param chance 0 to 1
 */
export function chanceWords(chance: number): string {
  if (chance < RARE) return 'fewer than 1 in 50';
  if (chance > 0.97) return 'nearly always';
  if (chance < 0.42) return `1 in ${Math.round(1 / chance)}`;
  const tenths = Math.round(chance * 10);
  return tenths >= 10 ? '19 in 20' : `${tenths} in 10`;
}
