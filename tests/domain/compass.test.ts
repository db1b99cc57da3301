import { expect, test } from 'vitest';
import { COMPASS_POINTS, compassPoint, parseBearing } from '../../src/domain/compass.ts';

test.each([
  ['48', 48],
  ['48 deg', 48],
  ['360', 0],
  ['NE', 45],
  ['nnw', 337.5],
])('reads %s', (text, degrees) => {
  expect(parseBearing(text)).toEqual({ ok: true, value: degrees });
});

test.each(['361', '-5', 'north', 'NEN', ''])('refuses "%s"', (text) => {
  expect(parseBearing(text)).toMatchObject({ ok: false, rule: 'bearing' });
});

test('reads back every point it names', () => {
  for (const point of COMPASS_POINTS) {
    const read = parseBearing(point);
    expect(read.ok && compassPoint(read.value)).toBe(point);
  }
  expect(compassPoint(359)).toBe('N');
  expect(compassPoint(-45)).toBe('NW');
});
