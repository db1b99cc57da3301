import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import fc from 'fast-check';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { filesWithNames, madeUpSeason, SEASON_ANSWERS, VENUE_ANSWERS } from '../commands/made-up-season.ts';

const COMMAND = fileURLToPath(new URL('../../src/commands/venue.ts', import.meta.url));
const SEED = 20_261_126;

let home: string;
let desk: string;

beforeEach(() => {
  home = mkdtempSync(join(tmpdir(), 'home-'));
  desk = mkdtempSync(join(tmpdir(), 'desk-'));
});
afterEach(() => {
  for (const folder of [home, desk]) rmSync(folder, { recursive: true });
});

function venue(...args: readonly string[]): void {
  const { status, stderr } = spawnSync(process.execPath, [COMMAND, ...args], {
    cwd: home,
    env: { PATH: process.env.PATH, HOME: home, PEG_ATLAS_CACHE: join(home, 'cache') },
    encoding: 'utf8',
  });
  expect([args[0], status, stderr]).toEqual([args[0], 0, expect.any(String)]);
}

/** A season of several sheets and one of few; nobody is asked here, and nobody need be. */
const SEASONS = [5, 2].map(
  (count) => fc.sample(madeUpSeason, { seed: SEED, numRuns: 60 }).find(({ papers }) => papers.length === count)!,
);

test.each(SEASONS)(
  'a season of sheets, built into a guide, leaves no name in it, in the cache, the register or the folder',
  (season) => {
    const all = { ...SEASON_ANSWERS, ...VENUE_ANSWERS };
    const answers = ['--answers', join(home, 'answers.yaml')];
    writeFileSync(join(home, 'answers.yaml'), JSON.stringify({ all }));
    venue('start', 'content', '--day', '2026-11-20', ...answers);
    mkdirSync(desk, { recursive: true });
    const papers = season.papers.map(({ file, bytes }) => {
      writeFileSync(join(desk, file), bytes);
      return join(desk, file);
    });
    venue('import', 'results', ...papers, '--yes', ...answers);
    venue('build', '--out', join(home, 'guide'));
    expect(existsSync(join(home, '.config', 'peg-atlas'))).toBe(true);
    expect(readFileSync(join(home, 'guide', 'long-pool', '1', 'index.html'), 'utf8')).toContain('Alder Lakes');
    expect(filesWithNames(home)).toEqual([]);
  },
);
