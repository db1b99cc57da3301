import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { bringOut } from '../../../src/commands/guide-folder/workshop.ts';

let root: string;
const workshop = () => join(root, 'workshop');
const to = () => join(root, 'guide');

beforeEach(() => {
  root = mkdtempSync(join(tmpdir(), 'workshop-'));
  mkdirSync(join(workshop(), 'pool'), { recursive: true });
  writeFileSync(join(workshop(), 'pool', 'index.html'), 'new');
  mkdirSync(to());
  writeFileSync(join(to(), 'old.html'), 'old');
});
afterEach(() => rmSync(root, { recursive: true }));

const refusing = (code: string) => () => {
  throw Object.assign(new Error(code), { code });
};

test.each([
  ['in one move', undefined],
  // `MoveFileEx` moves no folder to another volume (Microsoft, "MoveFileExW function"); Linux says EXDEV (rename(2)).
  ['as a copy where it is another disk of Linux', refusing('EXDEV')],
  ['as a copy where it is another disk of Windows', refusing('EPERM')],
])('a finished guide takes the place of what stood there, %s', (_, rename) => {
  bringOut(workshop(), to(), rename);
  expect(readFileSync(join(to(), 'pool', 'index.html'), 'utf8')).toBe('new');
  expect([existsSync(workshop()), existsSync(join(to(), 'old.html'))]).toEqual([false, false]);
});

test('a disk that is full is no other disk', () => {
  expect(() => bringOut(workshop(), to(), refusing('ENOSPC'))).toThrow('ENOSPC');
});
