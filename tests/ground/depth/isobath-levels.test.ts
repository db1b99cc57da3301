import { expect, test } from 'vitest';
import { isobathLevels } from '../../../src/ground/depth/isobath-levels.ts';

test.each([
  [0.9, [0.2, 0.4, 0.6, 0.8]],
  [1.7, [0.5, 1, 1.5]],
  [2.5, [0.5, 1, 1.5, 2]],
  [5.3, [1, 2, 3, 4, 5]],
  [18, [2, 4, 6, 8, 10, 12, 14, 16]],
  [65, [10, 20, 30, 40, 50, 60]],
])('a water %f m deep has isobaths at whole intervals above its deepest point', (deepest, levels) => {
  expect(isobathLevels(deepest)).toEqual(levels);
});

test('a dry bed has none', () => {
  expect(isobathLevels(0)).toEqual([]);
});
