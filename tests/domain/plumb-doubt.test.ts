import { expect, it } from 'vitest';
import { isFarFromSurvey, isPlumbable, readPlumbed } from '../../src/domain/plumb-doubt.ts';

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

it.each([
  ['2.05', 'm', 2.05],
  ['6 ft 9 in', 'ft', 2.0574],
  ['0.01', 'm', 0.01],
  ['30', 'm', 30],
] as const)('reads a typed depth of %s as metres', (typed, unit, metres) => {
  expect(readPlumbed(typed, unit)).toEqual({ ok: true, metres });
});

it.each([
  ['0', 'm'],
  ['0.009', 'm'],
  ['30.01', 'm'],
  ['205', 'm'],
  ['100', 'ft'],
] as const)(
  'refuses a depth of %s (%s) that no stillwater peg has, the same in the depth table and in a slip',
  (typed, unit) => {
    expect(readPlumbed(typed, unit)).toEqual({ ok: false, why: 'Expected a depth between 0 and 30 m.' });
  },
);

it('says how a depth is written where it cannot be read', () => {
  expect(readPlumbed('2,05', 'm')).toMatchObject({ ok: false, why: expect.stringMatching(/^Expected .+\. .+\.$/) });
  expect(readPlumbed('', 'm').ok).toBe(false);
});

it('holds a depth that came with a slip to the same bounds', () => {
  expect([0, 0.009, 0.01, 30, 30.01, Number.NaN].map(isPlumbable)).toEqual([false, false, true, true, false, false]);
});
