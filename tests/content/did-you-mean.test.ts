import { expect, test } from 'vitest';
import { didYouMean, listed, nearestWord } from '../../src/content/did-you-mean.ts';

test.each([
  ['feetures', 'features'],
  ['staus', 'status'],
  ['satus', 'status'],
  ['stauts', 'status'],
  ['STATUS', 'status'],
  ['112', '12'],
])('takes %s for %s', (written, meant) => {
  expect(nearestWord(written, ['features', 'status', '12', 'facing'])).toBe(meant);
});

test.each(['weather', '7', '', 'x'])('takes "%s" for nothing known', (written) => {
  expect(nearestWord(written, ['features', 'status', '1', 'facing'])).toBeNull();
});

test('gives the other advice where nothing is near', () => {
  expect(didYouMean('zzz', ['features'], 'Delete it.')).toBe('Delete it.');
});

test('lists the first words of many', () => {
  expect(listed(['a', 'b', 'c'], 2)).toBe('a, b and 1 more');
});
