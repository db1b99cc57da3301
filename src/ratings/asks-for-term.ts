import type { LatentFit, LatentModel, LinearCombination } from './engine/latent-model.ts';
import { emptyRowLikelihood, rowLikelihoodInPlace } from './engine/row-likelihood.ts';
import { LEVEL } from './rating-model.ts';

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
  const likelihood = emptyRowLikelihood(rows);
  rowLikelihoodInPlace(likelihood, latent.observations, predictorOf(latent, fit), fit.residualSd);
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

function predictorOf({ terms, observations }: LatentModel, fit: LatentFit): Float64Array {
  const predictor = new Float64Array(observations.lower.length).fill(fit.fixed[LEVEL]!.value);
  for (const { name, rows } of terms) {
    const effects = fit.effects(name);
    for (let i = 0; i < predictor.length; i++) {
      for (let k = rows.rowStart[i]!; k < rows.rowStart[i + 1]!; k++) {
        predictor[i] = predictor[i]! + rows.weight[k]! * effects[rows.column[k]!]!;
      }
    }
  }
  return predictor;
}

function weightedSum({ terms }: LatentModel, members: readonly number[], weight: Float64Array): LinearCombination {
  const effects = terms.flatMap(({ name, rows }) => {
    const sums = new Map<number, number>();
    for (const i of members) {
      for (let k = rows.rowStart[i]!; k < rows.rowStart[i + 1]!; k++) {
        const column = rows.column[k]!;
        sums.set(column, (sums.get(column) ?? 0) + weight[i]! * rows.weight[k]!);
      }
    }
    return [...sums].map(([column, sum]) => ({ term: name, column, weight: sum }));
  });
  return { fixed: [{ name: LEVEL, weight: members.reduce((sum, i) => sum + weight[i]!, 0) }], effects };
}
