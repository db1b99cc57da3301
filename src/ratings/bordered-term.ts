import type { LatentFit, LatentModel } from './engine/latent-model.ts';
import { eigenSmall } from './engine/small-symmetric.ts';
import { rowsAtMode, weightedSum } from './rows-at-mode.ts';

/** One factor beside a fitted model: the best sd of its effects, and any weighted sum of them averaged over that sd. */
export interface BorderedTerm {
  readonly sd: number;
  posterior(weights: readonly number[]): { readonly mean: number; readonly sd: number };
}

/** Sds that are averaged over: evenly spaced logarithms, from nothing that anybody would notice to a factor of 7. */
const SDS = Array.from({ length: 61 }, (_, i) => 0.002 * (2 / 0.002) ** (i / 60));

/**
 * A factor more beside a fitted model, without fitting that again: with everything else held at its mode, rows as their
 * quadratic there, the bordered system of its few effects is the difference C'WC − C'WZ H⁻¹ Z'WC, and the marginal likelihood of
 * its sd is in closed form. What is left out, that the rest would move a little to make room, changes no published interval by
 * more than a fiftieth. The sd has a half-normal prior and is averaged over.
 * @param levelOf The effect of each row, of `columns`; every row has one.
 */
export function borderedTerm(
  latent: LatentModel,
  fit: LatentFit,
  { columns, levels: levelOf }: { readonly columns: number; readonly levels: readonly number[] },
  sdScale: number,
): BorderedTerm {
  const rows = rowsAtMode(latent, fit);
  const members = Array.from({ length: columns }, (): number[] => []);
  levelOf.forEach((level, row) => {
    members[level]!.push(row);
  });
  const { covariance } = fit.jointAtMode(members.map((of) => weightedSum(latent, of, rows.weight)));
  const slopes = members.map((of) => of.reduce((sum, row) => sum + rows.slope[row]!, 0));
  const values = covariance.map((value) => -value);
  members.forEach((of, k) => {
    values[k * columns + k]! += of.reduce((sum, row) => sum + rows.weight[row]!, 0);
  });
  const { values: information, vectors } = eigenSmall({ count: columns, values });
  const pulls = vectors.map((vector) => dot(vector, slopes));
  const known = Array.from(information, (value) => Math.max(0, value));
  const logDensities = SDS.map((sd) =>
    known.reduce(
      (sum, a, j) => sum - 0.5 * Math.log1p(sd * sd * a) + (0.5 * pulls[j]! ** 2) / (a + 1 / (sd * sd)),
      Math.log(sd) - (sd * sd) / (2 * sdScale * sdScale),
    ),
  );
  const most = Math.max(...logDensities);
  const densities = logDensities.map((value) => Math.exp(value - most));
  const all = densities.reduce((sum, density) => sum + density, 0);
  return {
    sd: SDS[logDensities.indexOf(most)]!,
    posterior(weights) {
      const along = vectors.map((vector) => dot(vector, weights));
      let [first, second] = [0, 0];
      SDS.forEach((sd, i) => {
        let [mean, variance] = [0, 0];
        known.forEach((a, j) => {
          const precision = a + 1 / (sd * sd);
          mean += (along[j]! * pulls[j]!) / precision;
          variance += along[j]! ** 2 / precision;
        });
        first += (densities[i]! / all) * mean;
        second += (densities[i]! / all) * (variance + mean * mean);
      });
      return { mean: first, sd: Math.sqrt(Math.max(0, second - first * first)) };
    },
  };
}

function dot(a: ArrayLike<number>, b: ArrayLike<number>): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += a[i]! * b[i]!;
  return sum;
}
