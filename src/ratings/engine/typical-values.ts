import { isInformative, typicalValue } from './bounds.ts';
import type { PreparedModel } from './prepared-model.ts';

/** Sd of what the fixed effects leave of the rows' typical values; 1 where nothing but rounding is left to tell a scale by. */
export function dataSpread(prepared: PreparedModel): number {
  const { rows, fixed, observations } = prepared;
  const coefficients = leastSquaresOnQ(prepared);
  let sum = 0;
  let count = 0;
  let largest = 0;
  for (let i = 0; i < rows; i++) {
    if (!isInformative(observations.lower[i]!, observations.upper[i]!)) continue;
    let rest = typicalValue(observations.lower[i]!, observations.upper[i]!);
    largest = Math.max(largest, Math.abs(rest));
    fixed.q.forEach((column, k) => {
      rest -= coefficients[k]! * column[i]!;
    });
    sum += rest * rest;
    count++;
  }
  const spread = Math.sqrt(sum / Math.max(1, count));
  return spread > 1e-12 * largest ? spread : 1;
}

export function leastSquaresOnQ({ fixed, observations: { lower, upper } }: PreparedModel): Float64Array {
  return Float64Array.from(fixed.q, (column) => {
    let sum = 0;
    for (let i = 0; i < column.length; i++) sum += column[i]! * typicalValue(lower[i]!, upper[i]!);
    return sum;
  });
}
