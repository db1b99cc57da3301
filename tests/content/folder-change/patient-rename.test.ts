import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { renamePatiently } from '../../../src/content/folder-change/patient-rename.ts';

/** A system that refuses a move so many times. */
function refusing(platform: NodeJS.Platform, code: string, times: number) {
  let tries = 0;
  const waits: number[] = [];
  const rename = () => {
    tries += 1;
    if (tries <= times) throw Object.assign(new Error(code), { code });
  };
  return { world: { platform, rename, wait: (ms: number) => void waits.push(ms) }, waits, tries: () => tries };
}

test.each(['EPERM', 'EACCES', 'EBUSY'])('on Windows a file that is held open (%s) is waited for', (code) => {
  const { world, waits, tries } = refusing('win32', code, 3);
  renamePatiently('a', 'b', world);
  expect([tries(), waits]).toEqual([4, [20, 50, 100]]);
});

test('one that stays open is given up after a second and a half, with what the system said', () => {
  const { world, waits } = refusing('win32', 'EPERM', 99);
  expect(() => renamePatiently('a', 'b', world)).toThrow('EPERM');
  expect(waits.reduce((sum, each) => sum + each, 0)).toBe(1570);
});

test.each([
  ['linux', 'EPERM'],
  ['darwin', 'EACCES'],
  ['win32', 'ENOENT'],
  ['win32', 'ENOSPC'],
] as const)('on %s a refusal with %s is meant and told at once', (platform, code) => {
  const { world, tries } = refusing(platform, code, 1);
  expect(() => renamePatiently('a', 'b', world)).toThrow(code);
  expect(tries()).toBe(1);
});

test('on this system it moves a file over another', () => {
  const folder = mkdtempSync(join(tmpdir(), 'move-'));
  const [from, to] = [join(folder, 'new'), join(folder, 'old')];
  writeFileSync(from, 'new');
  writeFileSync(to, 'old');
  renamePatiently(from, to);
  expect([existsSync(from), readFileSync(to, 'utf8')]).toEqual([false, 'new']);
  rmSync(folder, { recursive: true });
});
