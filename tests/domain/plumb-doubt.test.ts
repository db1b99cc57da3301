import { expect, it } from 'vitest';
import { isFarFromSurvey } from '../../src/domain/plumb-doubt.ts';

// Our own choice, not a published figure: a foot, and more where soundings lie farther off.
it.each([
  [2.05, 2.3, 0, false],
  [2.05, 2.4, 0, true],
  [2.05, 1.6, 0, true],
  [2.05, 2.4, 4, false],
  [6.73, 2.05, 10, true],
])('of %f m plumbed and %f m surveyed, %f m from a sounding: %s', (plumbed, surveyed, off, isFar) => {
  expect(isFarFromSurvey(plumbed, surveyed, off)).toBe(isFar);
});
