import { solveSmall } from './small-symmetric.ts';

/**
 * The step within its bounds, and the gain the whole slope promises. A parameter whose step is cut keeps the cut one, and the
 * others are solved for again with it, so that cutting one does not send the rest astray.
 */
export function boundedNewtonStep(
  gradient: Float64Array,
  information: Float64Array,
  least: Float64Array,
  most: Float64Array,
): { step: Float64Array; gain: number } {
  const count = gradient.length;
  const step = new Float64Array(count);
  const isCut = gradient.map((g, i) => ((most[i] === 0 && g >= 0) || (least[i] === 0 && g <= 0) ? 1 : 0));
  let gain = -1;
  for (let round = 0; round <= count; round++) {
    const matrix = information.map((value, k) => {
      const i = Math.floor(k / count);
      const j = k % count;
      return isCut[i] || isCut[j] ? (i === j ? 1 : 0) : value;
    });
    const rhs = gradient.map((g, i) =>
      isCut[i] ? 0 : step.reduce((sum, s, j) => sum - (isCut[j] ? information[i * count + j]! * s : 0), g),
    );
    const solved = solveSmall({ count, values: matrix }, rhs);
    if (gain < 0) gain = dot(solved, rhs);
    let isInside = true;
    for (let i = 0; i < count; i++) {
      if (isCut[i]) continue;
      step[i] = Math.min(most[i]!, Math.max(least[i]!, solved[i]!));
      if (step[i] !== solved[i]) {
        isCut[i] = 1;
        isInside = false;
      }
    }
    if (isInside) break;
  }
  if (dot(step, gradient) > 0) return { step, gain };
  // The cuts have spoilt the direction: each parameter by itself.
  const alone = gradient.map((g, i) => Math.min(most[i]!, Math.max(least[i]!, g / (information[i * count + i]! || 1))));
  return { step: alone, gain };
}

/**
 * Makes the information agree with how the gradient changed along the last step: the update of Broyden, Fletcher, Goldfarb and
 * Shanno, 1970. Left alone where the change contradicts the information by more than a factor of twenty.
 */
export function secantInPlace(information: Float64Array, step: Float64Array, change: Float64Array): void {
  const count = step.length;
  const image = step.map((_, i) => step.reduce((sum, s, j) => sum + information[i * count + j]! * s, 0));
  const curved = dot(step, image);
  const wanted = dot(step, change);
  if (!(curved > 0) || !(wanted > 0.05 * curved) || !(wanted < 20 * curved)) return;
  for (let i = 0; i < count; i++) {
    for (let j = 0; j < count; j++) {
      const at = i * count + j;
      information[at] = information[at]! + (change[i]! * change[j]!) / wanted - (image[i]! * image[j]!) / curved;
    }
  }
}

function dot(a: Float64Array, b: Float64Array): number {
  return a.reduce((sum, value, i) => sum + value * b[i]!, 0);
}
