import type { Say } from '../words/say.ts';

/** Chances nobody can tell from these are told as such. */
const RARE = 0.02;

/** Below this a chance is once in so many, above it so many times in ten: once in 3 is less than 4 times in 10, once in 2 would be more. */
const LARGEST_ONE_IN = 0.35;

/**
 * A chance as people say it: `once in 6`, from more than a third on as `7 times in 10`; `less than once in 50` and
 * `nearly always` at the ends, where a figure would claim more than the log can know. A larger chance is never told as a smaller one.
 * @param chance 0 to 1
 * @param say the voice of the page
 */
export function chanceWords(chance: number, say: Say): string {
  if (chance < RARE) return say('chance.rare');
  if (chance > 0.97) return say('chance.nearlyAlways');
  if (chance < LARGEST_ONE_IN) return say('chance.onceIn', { count: Math.round(1 / chance) });
  const tenths = Math.round(chance * 10);
  return tenths >= 10 ? say('chance.nineteenInTwenty') : say('chance.timesInTen', { tenths });
}
