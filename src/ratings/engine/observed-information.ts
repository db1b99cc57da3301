import { objectiveAt, type Search, slopeAt } from './marginal-search.ts';
import type { Maximum } from './maximise-marginal.ts';

/**
 * Minus the second derivatives of the objective at its maximum, by central differences of the exact gradient, symmetric, by
 * rows. The search's own information sets the lengths of the differences: a thousandth of each parameter's own sd. The state is left at
 * `point`.
 */
export function observedInformation(search: Search, { point, information }: Maximum): Float64Array {
  const nearly = information();
  const count = point.length;
  const observed = new Float64Array(count * count);
  for (let i = 0; i < count; i++) {
    // A log sd that the data hardly tell has almost no information: a tenth of a log unit is far enough for it.
    const length = 1e-3 / Math.sqrt(Math.max(1e-4, nearly[i * count + i]!));
    const ahead = gradientBeside(search, point, i, length);
    const behind = gradientBeside(search, point, i, -length);
    for (let j = 0; j < count; j++) {
      const share = (behind[j]! - ahead[j]!) / (4 * length);
      observed[i * count + j] = observed[i * count + j]! + share;
      observed[j * count + i] = observed[j * count + i]! + share;
    }
  }
  objectiveAt(search, point);
  return observed;
}

function gradientBeside(search: Search, point: Float64Array, index: number, length: number): Float64Array {
  const beside = point.slice();
  beside[index] = beside[index]! + length;
  objectiveAt(search, beside);
  return slopeAt(search, beside).gradient;
}
