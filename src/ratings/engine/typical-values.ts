import type { PreparedModel } from './prepared-model.ts';

/** A value to stand for each row before anything is known: the middle of its bounds, or the one that is finite. */
export function typicalValue(lower: number, upper: number): number {
  if (Number.isFinite(lower)) return Number.isFinite(upper) ? 0.5 * (lower + upper) : lower;
  return Number.isFinite(upper) ? upper : 0;
}

/** Sd of what the fixed effects leave of the rows' typical values; 1 where nothing is left to tell a scale by. */
export function dataSpread(prepared: PreparedModel): number {
  const { rows, fixed, observations } = prepared;
  const coefficients = leastSquaresOnQ(prepared);
  let sum = 0;
  let count = 0;
  for (let i = 0; i < rows; i++) {
    if (!isInformative(observations.lower[i]!, observations.upper[i]!)) continue;
    let rest = typicalValue(observations.lower[i]!, observations.upper[i]!);
    fixed.q.forEach((column, k) => {
      rest -= coefficients[k]! * column[i]!;
    });
    sum += rest * rest;
    count++;
  }
  const spread = Math.sqrt(sum / Math.max(1, count));
  return spread > 0 ? spread : 1;
}

export function isInformative(lower: number, upper: number): boolean {
  return Number.isFinite(lower) || Number.isFinite(upper);
}

export function leastSquaresOnQ({ fixed, observations: { lower, upper } }: PreparedModel): Float64Array {
  return Float64Array.from(fixed.q, (column) => {
    let sum = 0;
    for (let i = 0; i < column.length; i++) sum += column[i]! * typicalValue(lower[i]!, upper[i]!);
    return sum;
  });
}
