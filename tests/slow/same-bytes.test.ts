import { spawnSync } from 'node:child_process';
import { cpSync, mkdtempSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { childEnvironment } from '../child-environment.ts';

const PROJECT = join(import.meta.dirname, '..', '..');
const work = mkdtempSync(join(tmpdir(), 'peg-atlas-same-bytes-'));
afterAll(() => rmSync(work, { recursive: true, force: true }));

/** Takes the last match out of a folder's log, and gives back what puts it in again. */
function withoutLastMatch(folder: string): () => void {
  const year = readdirSync(join(folder, 'sessions')).sort().at(-1)!;
  const files = ['events.csv', 'sessions.csv'].map((name) => join(folder, 'sessions', year, name));
  const texts = files.map((file) => readFileSync(file, 'utf8'));
  const last = texts[0]!.trim().split('\n').at(-1)!.split(',')[0]!;
  files.forEach((file, i) => {
    const rows = texts[i]!.split('\n').filter((row) => row.split(',')[0] !== last);
    expect(rows.join('\n')).not.toBe(texts[i]);
    writeFileSync(file, rows.join('\n'));
  });
  return () => {
    files.forEach((file, i) => {
      writeFileSync(file, texts[i]!);
    });
  };
}

/** Builds a folder with a cache of its own, and gives every file of the guide but those that tell of the guide before. */
function build(folder: string, cache: string, out: string): ReadonlyMap<string, string> {
  const { status, stderr } = spawnSync(
    process.execPath,
    [join(PROJECT, 'src/commands/venue.ts'), 'build', '--quiet', '--venue', folder, '--out', join(work, out)],
    { encoding: 'utf8', env: childEnvironment({ PEG_ATLAS_CACHE: join(work, cache) }), cwd: PROJECT },
  );
  expect(status, stderr).toBe(0);
  const names = readdirSync(join(work, out), { recursive: true, encoding: 'utf8' });
  const files = names.filter((name) => !name.startsWith('changes') && statSync(join(work, out, name)).isFile());
  return new Map(files.map((name) => [name, readFileSync(join(work, out, name), 'latin1')]));
}

function differing(a: ReadonlyMap<string, string>, b: ReadonlyMap<string, string>): string[] {
  return [...new Set([...a.keys(), ...b.keys()])].filter((name) => a.get(name) !== b.get(name));
}

test('a guide has the same bytes from nothing, from what was kept of an earlier log, and after a match was undone', () => {
  const folder = join(work, 'venue');
  cpSync(join(PROJECT, 'content'), folder, { recursive: true });
  const cold = build(folder, 'cold', 'cold-guide');
  const putBack = withoutLastMatch(folder);
  const without = build(folder, 'warm', 'guide');
  expect(differing(without, cold)).toContain('workings/index.html');
  putBack();
  const warm = build(folder, 'warm', 'guide');
  expect(differing(warm, cold)).toEqual([]);
  withoutLastMatch(folder);
  expect(differing(build(folder, 'cold', 'undone-guide'), without)).toEqual([]);
}, 600_000);
