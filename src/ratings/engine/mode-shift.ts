import type { LatentState } from './latent-state.ts';
import { solveSystemInPlace } from './latent-system.ts';
import { termPartInPlace, transposedProductInPlace } from './linear-predictor.ts';
import type { FreeParameters } from './marginal-slope.ts';

/**
 * How far the mode moves, to first order, when the parameters move by `step`: where the search for the next mode begins, so that it
 * mostly ends with the first factor. The mode x solves Aᵀ ℓ′(A x) = P x; by the implicit function theorem
 *
 *   H dx = dAᵀ ℓ′ + Aᵀ (dℓ′ − W dA x),
 *
 * where the log sd of a term moves that term's columns of A in proportion, so that its share of dAᵀ ℓ′ is x itself, log σ moves ℓ′
 * alone, and β is an offset of A x.
 * @param state at its mode, factored there
 * @param step by log sds, log σ and β on Q, in the order of the free parameters
 */
export function modeShift(state: LatentState, free: FreeParameters, step: ArrayLike<number>): Float64Array {
  const { prepared, system, likelihood, x, effects, rowScratch: part } = state;
  const { blocks, fixed, levels, rows } = prepared;
  const { weight, slopeBySpread } = likelihood;
  const rowSlope = new Float64Array(rows);
  const moved = (values: Float64Array, by: number) => {
    for (let i = 0; i < rows; i++) rowSlope[i] = rowSlope[i]! - by * weight[i]! * values[i]!;
  };
  free.terms.forEach((term, at) => {
    termPartInPlace(part, system, effects, term);
    moved(part, step[at]!);
  });
  let at = free.terms.length;
  if (free.isResidualFree) {
    for (let i = 0; i < rows; i++) rowSlope[i] = rowSlope[i]! + step[at]! * slopeBySpread[i]!;
    at++;
  }
  for (const column of free.fixed) moved(fixed.q[column]!, step[at++]!);
  const shift = new Float64Array(x.length);
  transposedProductInPlace(shift, system, rowSlope);
  free.terms.forEach((term, k) => {
    const { from, count } = blocks[term]!;
    const first = from < 0 ? 0 : levels + from;
    for (let i = first; i < first + count; i++) shift[i] = shift[i]! + step[k]! * x[i]!;
  });
  solveSystemInPlace(system, shift);
  return shift;
}
