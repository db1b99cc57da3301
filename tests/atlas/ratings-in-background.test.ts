import { mkdtemp, readdir, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { keptRatings, loadRatings } from '../../src/atlas/ratings-cache.ts';
import { ratingsInBackground } from '../../src/atlas/ratings-in-background.ts';
import { simulateFromModel } from '../demo/simulate-from-model.ts';

let folder: string;
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'peg-atlas-cache-'));
});
afterEach(() => rm(folder, { recursive: true }));

const { venue } = simulateFromModel({ seed: 3, waters: 1, pegs: 8, anglers: 12, events: 14, features: 1 });

test('a thread of its own tells what it works on, keeps the ratings and gives the bytes of this one', async () => {
  const told: string[] = [];
  const ratings = await (await ratingsInBackground(venue, { folder, progress: (what) => told.push(what) })).ratings;
  expect(told).toContain('whole bag');
  expect(await keptRatings(venue, folder)).toEqual(ratings);
  const elsewhere = await mkdtemp(join(tmpdir(), 'peg-atlas-cache-'));
  const here = await loadRatings(venue, { folder: elsewhere });
  await rm(elsewhere, { recursive: true });
  expect(JSON.stringify(ratings)).toBe(JSON.stringify(here));
}, 60_000);

test('are kept where the caller stood when they were begun, wherever the pages have the program stand by then', async () => {
  const stood = process.cwd();
  const elsewhere = await mkdtemp(join(tmpdir(), 'peg-atlas-pages-'));
  vi.stubEnv('PEG_ATLAS_CACHE', '');
  process.chdir(folder);
  try {
    const { ratings } = await ratingsInBackground(venue);
    process.chdir(elsewhere);
    await ratings;
  } finally {
    process.chdir(stood);
  }
  expect(await keptRatings(venue, join(folder, '.cache', 'peg-atlas'))).not.toBeNull();
  expect(await readdir(elsewhere)).toEqual([]);
  await rm(elsewhere, { recursive: true });
}, 60_000);

test('ratings that are kept need no thread, and a thread that cannot start costs nothing but its help', async () => {
  const ratings = await (await ratingsInBackground(venue, { folder }, '/nowhere/at-all.ts')).ratings;
  expect(ratings.bags[0]?.pegs).toHaveLength(8);
  const told: string[] = [];
  const again = await ratingsInBackground(venue, { folder, progress: (what) => told.push(what) });
  expect(await again.ratings).toEqual(ratings);
  expect(told).toEqual([]);
}, 60_000);

test('work that nobody wants any more is ended, and not begun again', async () => {
  const ended = new AbortController();
  const told: string[] = [];
  const { ratings } = await ratingsInBackground(venue, {
    folder,
    signal: ended.signal,
    progress: (what) => {
      told.push(what);
      ended.abort();
    },
  });
  await expect(ratings).rejects.toThrow('aborted');
  expect(told[0]).toBe('first look');
  expect(await keptRatings(venue, folder)).toBeNull();
}, 60_000);
