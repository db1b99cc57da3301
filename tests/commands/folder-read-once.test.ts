import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { smallVenue } from '../content/small-venue.ts';

const PROJECT = fileURLToPath(new URL('../..', import.meta.url));
const REPORTER = fileURLToPath(new URL('report-reads.ts', import.meta.url));
const { texts } = smallVenue();
let scratch: string;
let folder: string;

beforeAll(() => {
  scratch = mkdtempSync(join(tmpdir(), 'reads-'));
  folder = join(scratch, 'venue');
  for (const [path, text] of texts) {
    mkdirSync(dirname(join(folder, path)), { recursive: true });
    writeFileSync(join(folder, path), text);
  }
});
afterAll(() => rmSync(scratch, { recursive: true }));

/** How often each file of the folder was opened by a whole build, by whichever of its threads. */
function readsOf(name: string, program: readonly string[]): Record<string, number> {
  const report = join(scratch, `${name}.txt`);
  const environment = {
    VENUE_DIR: folder,
    READS_OF: folder,
    READS_REPORT: report,
    PEG_ATLAS_CACHE: join(scratch, name),
  };
  const { status, stdout, stderr } = spawnSync(process.execPath, ['--import', REPORTER, ...program], {
    cwd: PROJECT,
    env: { ...process.env, ...environment, ASTRO_TELEMETRY_DISABLED: '1' },
    encoding: 'utf8',
  });
  expect(status, stdout + stderr).toBe(0);
  expect(existsSync(join(scratch, name, 'index.html'))).toBe(true);
  const counts: Record<string, number> = {};
  for (const path of readFileSync(report, 'utf8').trimEnd().split('\n')) counts[path] = (counts[path] ?? 0) + 1;
  return counts;
}

describe('a whole build opens each file of the folder once', () => {
  const once = Object.fromEntries([...texts.keys()].map((path) => [path, 1]));

  test('by the command', () => {
    const out = join(scratch, 'command');
    expect(readsOf('command', ['src/commands/venue.ts', 'build', '--quiet', '--out', out])).toEqual(once);
  });

  test("by Astro's own build", () => {
    const out = join(scratch, 'astro');
    expect(readsOf('astro', ['node_modules/astro/bin/astro.mjs', 'build', '--outDir', out])).toEqual(once);
  });
});
