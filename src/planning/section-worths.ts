import { LOWER_SHARE, UPPER_SHARE } from '../domain/interval-level.ts';
import type { Plan } from './plan-problem.ts';
import type { WorthDraws } from './worth-draws.ts';

/** What the log says of one section against the others: multiples of par. */
export interface SectionWorth {
  readonly mean: number;
  readonly low80: number;
  readonly high80: number;
  /** Chance that its mean is the best of all sections'; shared where equal. */
  readonly chanceBest: number;
  /** Whether the difference to the mean of all sections leaves out zero. */
  readonly standsOut: boolean;
}

/** The mean worth of each section over draws from the posterior. */
export function sectionWorths(plan: Plan, { draws, places, worth }: WorthDraws): SectionWorth[] {
  const means = plan.map(() => new Float64Array(draws));
  const away = plan.map(() => new Float64Array(draws));
  const best = new Float64Array(plan.length);
  for (let d = 0; d < draws; d++) {
    const now = plan.map(
      (section) => section.reduce((sum, place) => sum + worth[d * places + place]!, 0) / section.length,
    );
    const overall = now.reduce((sum, mean) => sum + mean, 0) / plan.length;
    const most = Math.max(...now);
    const ties = now.filter((mean) => mean === most).length;
    now.forEach((mean, s) => {
      means[s]![d] = mean;
      away[s]![d] = mean - overall;
      if (mean === most) best[s] = best[s]! + 1 / ties;
    });
  }
  return plan.map((_, s) => {
    const sorted = means[s]!.toSorted();
    const differences = away[s]!.toSorted();
    const at = (values: Float64Array, share: number) => values[Math.round(share * (draws - 1))]!;
    return {
      mean: means[s]!.reduce((sum, mean) => sum + mean, 0) / draws,
      low80: at(sorted, LOWER_SHARE),
      high80: at(sorted, UPPER_SHARE),
      chanceBest: best[s]! / draws,
      standsOut: plan.length > 1 && (at(differences, LOWER_SHARE) > 0 || at(differences, UPPER_SHARE) < 0),
    };
  });
}
