import type { LatentFit, LatentModel, LinearCombination, SparseRows } from './engine/latent-model.ts';
import { eigenSmall } from './engine/small-symmetric.ts';
import { rowsAtMode, weightedSum } from './rows-at-mode.ts';

/** One group of effects beside a fitted model: the best sd of them, and any weighted sum averaged over that sd. */
export interface BorderedTerm {
  readonly sd: number;
  /** Log marginal likelihood at that sd over that without the term: how far the log asks for it. */
  readonly logGain: number;
  /** What the term's effects add to sums of the model's own once those have made room for it: a row of weights for each sum. */
  besides(sums: readonly LinearCombination[], weights: readonly (readonly number[])[]): number[][];
  posterior(weights: readonly number[]): { readonly mean: number; readonly sd: number };
}

/** Sds that are averaged over: evenly spaced logarithms, from nothing that anybody would notice to a factor of 7. */
const SDS = Array.from({ length: 61 }, (_, i) => 0.002 * (2 / 0.002) ** (i / 60));

/**
 * A group of effects more beside a fitted model, without fitting that again: with everything else held at its mode, rows as their
 * quadratic there, the bordered system of its few effects is the difference C'WC − C'WZ H⁻¹ Z'WC, and the marginal likelihood of
 * its sd is in closed form. What is left out, that the rest would move a little to make room, changes no published interval by
 * more than a fiftieth. The sd has a half-normal prior and is averaged over.
 * @param rows The effects of each row with their weights, of `columns`.
 */
export function borderedTerm(
  latent: LatentModel,
  fit: LatentFit,
  { columns, rows: own }: { readonly columns: number; readonly rows: SparseRows },
  sdScale: number,
): BorderedTerm {
  const { weight, slope } = rowsAtMode(latent, fit);
  const members = Array.from({ length: columns }, () => ({ rows: [] as number[], weights: [] as number[] }));
  const slopes = new Float64Array(columns);
  const direct = new Float64Array(columns * columns);
  const count = own.rowStart.length - 1;
  for (let row = 0; row < count; row++) {
    for (let k = own.rowStart[row]!; k < own.rowStart[row + 1]!; k++) {
      const [column, share] = [own.column[k]!, own.weight[k]!];
      members[column]!.rows.push(row);
      members[column]!.weights.push(share);
      slopes[column] = slopes[column]! + share * slope[row]!;
      for (let j = own.rowStart[row]!; j < own.rowStart[row + 1]!; j++) {
        const at = column * columns + own.column[j]!;
        direct[at] = direct[at]! + share * own.weight[j]! * weight[row]!;
      }
    }
  }
  const sums = members.map(({ rows, weights }) => weightedSum(latent, rows, productOf(weight, rows, weights)));
  const { covariance } = fit.jointAtMode(sums);
  const values = direct.map((value, at) => value - covariance[at]!);
  const { values: information, vectors } = eigenSmall({ count: columns, values });
  const pulls = vectors.map((vector) => dot(vector, slopes));
  const known = Array.from(information, (value) => Math.max(0, value));
  const logGains = SDS.map((sd) =>
    known.reduce((sum, a, j) => sum - 0.5 * Math.log1p(sd * sd * a) + (0.5 * pulls[j]! ** 2) / (a + 1 / (sd * sd)), 0),
  );
  const logDensities = SDS.map((sd, i) => logGains[i]! + Math.log(sd) - (sd * sd) / (2 * sdScale * sdScale));
  const most = Math.max(...logDensities);
  const densities = logDensities.map((value) => Math.exp(value - most));
  const all = densities.reduce((sum, density) => sum + density, 0);
  return {
    sd: SDS[logDensities.indexOf(most)]!,
    logGain: Math.max(0, ...logGains),
    besides: (asked, weights) =>
      fit.crossAtMode(asked, sums).map((taken, i) => weights[i]!.map((each, column) => each - taken[column]!)),
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

/** Weights of all rows, with those of some multiplied by a share each. */
function productOf(weight: ArrayLike<number>, rows: readonly number[], shares: readonly number[]): Float64Array {
  const product = Float64Array.from(weight);
  rows.forEach((row, k) => {
    product[row] = product[row]! * shares[k]!;
  });
  return product;
}

function dot(a: ArrayLike<number>, b: ArrayLike<number>): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += a[i]! * b[i]!;
  return sum;
}
