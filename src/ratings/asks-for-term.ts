import type { LatentFit, LatentModel } from './engine/latent-model.ts';
import { rowsAtMode, weightedSum } from './rows-at-mode.ts';

/**
 * Whether a log asks for a term that its model does not hold: how far the score of the term's variance at zero lies above what
 * it would be without such a spread, in its own standard deviations (Rao's score test for a variance component: Verbeke and
 * Molenberghs, Biometrics 59, 2003). About standard normal where there is no spread. Costs no fit.
 *
 * With r = dℓ/dη and w = −d²ℓ/dη² of the rows at the mode, the score is ½ Σ over groups ((Σ r)² − Σ w + Var Σ w η).
 * @param groupOf The group of each row; negative for none.
 */
export function scoreOfSpread(latent: LatentModel, fit: LatentFit, groupOf: readonly number[]): number {
  const rows = groupOf.length;
  const likelihood = rowsAtMode(latent, fit);
  const groups = [
    ...Map.groupBy(
      Array.from({ length: rows }, (_, i) => i).filter((i) => groupOf[i]! >= 0),
      (i) => groupOf[i]!,
    ),
  ];
  const { sd } = fit.posterior(groups.map(([, members]) => weightedSum(latent, members, likelihood.weight)));
  let score = 0;
  let variance = 0;
  groups.forEach(([, members], g) => {
    let slope = 0;
    let weight = 0;
    for (const i of members) {
      slope += likelihood.slope[i]!;
      weight += likelihood.weight[i]!;
    }
    const expected = Math.max(0, weight - sd[g]! ** 2);
    score += 0.5 * (slope * slope - expected);
    variance += 0.5 * expected * expected;
  });
  return variance > 0 ? score / Math.sqrt(variance) : 0;
}
