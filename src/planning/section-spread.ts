import type { Plan } from './plan-problem.ts';
import type { WorthVectors } from './worth-draws.ts';

/** How far a plan's sections lie apart. */
export interface SectionSpread {
  /** Mean over the draws of the variance between section means; the square of what is shown. */
  readonly meanSquare: number;
  /** Of the section that stands out most: its mean less the mean of all sections, in sds of what is known of that. */
  readonly standsOut: number;
}

/** The mean square between the section means of a plan, over the draws behind the vectors. */
export function spreadOf(plan: Plan, { length, vectors, mean }: WorthVectors): SectionSpread {
  const sections = plan.length;
  const means = new Float64Array(sections * length);
  const expected = new Float64Array(sections);
  const all = new Float64Array(length);
  plan.forEach((section, s) => {
    for (const place of section) {
      expected[s] = expected[s]! + mean[place]! / section.length;
      // The root is lower: what lies behind the place's own column is nothing.
      for (let k = 0; k <= place; k++) {
        means[s * length + k] = means[s * length + k]! + vectors[place * length + k]! / section.length;
      }
    }
    for (let k = 0; k < length; k++) all[k] = all[k]! + means[s * length + k]! / sections;
  });
  const overall = expected.reduce((sum, value) => sum + value, 0) / sections;
  let meanSquare = 0;
  let standsOut = 0;
  for (let s = 0; s < sections; s++) {
    let square = 0;
    for (let k = 0; k < length; k++) square += (means[s * length + k]! - all[k]!) ** 2;
    meanSquare += square / sections;
    const away = expected[s]! - overall;
    const sd = Math.sqrt(Math.max(0, square - away * away));
    if (sections > 1)
      standsOut = Math.max(standsOut, sd > 0 ? Math.abs(away) / sd : away === 0 ? 0 : Number.POSITIVE_INFINITY);
  }
  return { meanSquare, standsOut };
}
