import { expect, it } from 'vitest';
import { HERMITE_RULE } from '../../../src/ratings/engine/gauss-hermite.ts';

// The moments of the standard normal: 0 for odd powers, (k − 1)!! for even ones (Abramowitz and Stegun, 26.2.40).
it.each([
  [0, 1],
  [1, 0],
  [2, 1],
  [3, 0],
  [4, 3],
  [5, 0],
])('the 3-point rule tells moment %i of a standard normal: %i', (power, moment) => {
  expect(HERMITE_RULE.reduce((sum, { node, weight }) => sum + weight * node ** power, 0)).toBeCloseTo(moment, 12);
});
