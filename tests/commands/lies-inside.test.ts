import { posix, win32 } from 'node:path';
import { expect, test } from 'vitest';
import { liesInside } from '../../src/commands/lies-inside.ts';

test.each([
  ['/club/content', '/club/content', true],
  ['/club/content', '/club/content/keys', true],
  ['/club/content', '/club/content/..keys', true],
  ['/club/content', '/club/content.import.yaml', false],
  ['/club/content', '/home/keys', false],
])('of %s and %s it says %s', (folder, path, isInside) => {
  expect(liesInside(folder, path, posix)).toBe(isInside);
});

test.each([
  ['C:\\club\\content', 'c:\\Club\\content\\keys', true],
  ['C:\\club\\content', 'C:\\Users\\us\\keys', false],
  ['D:\\club\\content', 'C:\\Users\\us\\keys', false],
])('on Windows, of %s and %s it says %s', (folder, path, isInside) => {
  expect(liesInside(folder, path, win32)).toBe(isInside);
});
