import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { getCompileCacheDir } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { keepCompiledCode } from '../../src/commands/compiled-code.ts';

const VENUE = fileURLToPath(new URL('../../src/commands/venue.ts', import.meta.url));
let folder: string;

beforeEach(() => {
  folder = join(mkdtempSync(join(tmpdir(), 'compiled-code-')), 'kept');
});
afterEach(() => rmSync(join(folder, '..'), { recursive: true, force: true }));

function version(): string {
  const { NODE_COMPILE_CACHE: _, ...environment } = process.env;
  const { stdout, status } = spawnSync(process.execPath, [VENUE, 'version', '--json'], {
    encoding: 'utf8',
    env: { ...environment, PEG_ATLAS_CACHE: folder },
  });
  expect(status).toBe(0);
  return stdout;
}

test('compiled code is kept where something is kept, and a command says the same from it', () => {
  mkdirSync(folder);
  const first = version();
  const kept = () => readdirSync(join(folder, 'code'), { recursive: true }).length;
  const files = kept();
  expect(files).toBeGreaterThan(1);
  expect(version()).toBe(first);
  expect(kept()).toBe(files);
});

test('where nothing is kept, a command makes no folder', () => {
  version();
  expect(existsSync(folder)).toBe(false);
});

test('a command that writes pages has its threads alone keep what they compile, since the pages have other names each time', () => {
  mkdirSync(folder);
  const environment: NodeJS.ProcessEnv = {};
  const before = getCompileCacheDir();
  keepCompiledCode(folder, 'threads alone', environment);
  expect(environment.NODE_COMPILE_CACHE).toBe(join(folder, 'code'));
  expect(getCompileCacheDir()).toBe(before);
});
