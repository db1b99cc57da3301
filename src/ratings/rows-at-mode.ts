import type { LatentFit, LatentModel, LinearCombination } from './engine/latent-model.ts';
import { emptyRowLikelihood, type RowLikelihood, rowLikelihoodInPlace } from './engine/row-likelihood.ts';
import { LEVEL } from './rating-model.ts';

/** Slopes and weights of the rows at the mode of a fit: what a term that the model does not hold would have to go by. */
export function rowsAtMode(latent: LatentModel, fit: LatentFit): RowLikelihood {
  const likelihood = emptyRowLikelihood(latent.observations.lower.length);
  rowLikelihoodInPlace(likelihood, latent.observations, predictorOf(latent, fit), fit.residualSd);
  return likelihood;
}

function predictorOf({ terms, observations }: LatentModel, fit: LatentFit): Float64Array {
  const [level] = fit.jointAtMode([{ fixed: [{ name: LEVEL, weight: 1 }], effects: [] }]).mean;
  const predictor = new Float64Array(observations.lower.length).fill(level!);
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

/** The sum over some rows of what the model says of them, each times its weight. */
export function weightedSum(
  { terms }: LatentModel,
  members: readonly number[],
  weight: ArrayLike<number>,
): LinearCombination {
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
