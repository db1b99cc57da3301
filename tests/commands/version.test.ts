import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { run } from '../../src/commands/version.ts';
import { NEWEST_FORMAT } from '../../src/content/folder-format.ts';
import { recordedIo } from './recorded-io.ts';

const PROJECT = fileURLToPath(new URL('../..', import.meta.url));
const read = (path: string) => readFileSync(join(PROJECT, path), 'utf8');
const { version, license } = JSON.parse(read('package.json')) as { version: string; license: string };

test('says the program’s version and the newest folder it reads, for people and for programs', async () => {
  const io = recordedIo();
  expect(await run([], io)).toBe(0);
  expect(io.printed).toEqual([
    expect.stringContaining(`Peg Atlas ${version}, venue folders up to format ${NEWEST_FORMAT}`),
  ]);
  const json = recordedIo();
  await run(['--json'], json);
  expect(JSON.parse(json.printed.join(''))).toEqual({ version, format: NEWEST_FORMAT, node: process.version });
});

test('every version has its part in the list of changes, and the licence is the one the package names', () => {
  expect(read('CHANGELOG.md')).toContain(`\n## ${version}\n`);
  expect([license, read('LICENSE').split('\n')[0]]).toEqual(['MIT', 'MIT License']);
});
