import { expect, test } from 'vitest';
import { parseGradient, parseSlope } from '../../src/domain/slope.ts';

// Angles by atan(rise/run), to a tenth of a degree.
test.each([
  ['1 in 2', 26.6],
  ['1:3', 18.4],
  ['1 in 4', 14.0],
  ['26 deg', 26],
  ['26°', 26],
])('reads %s', (text, degrees) => {
  const read = parseSlope(text);
  expect(read.ok && read.value).toBeCloseTo(degrees, 1);
});

test.each(['26', 'steep', '1 in 0', '95 deg', ''])('refuses "%s"', (text) => {
  expect(parseSlope(text).ok).toBe(false);
});

test('reads a gradient as rise over run', () => {
  expect(parseGradient('1 in 20')).toEqual({ ok: true, value: 0.05 });
});
