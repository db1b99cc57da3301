import { expect, test } from 'vitest';
import { fairness } from './fairness.ts';

/** `npm run reference:plans` prints the whole table over more venues. */
test('at least halves the spread of true section means where a log knows its pegs, and says where there is no difference', () => {
  const solid = fairness('solid: pegs differ, 130 matches', 3);
  expect(solid.planned).toBeLessThan(solid.random / 2);
  expect(solid.planned).toBeLessThan(solid.equalCuts / 2);
  expect(solid.noDifference).toBe(0);
  const none = fairness('none: every peg alike, 130 matches', 2);
  expect(none.noDifference).toBe(2);
});
