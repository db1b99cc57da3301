import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, beforeEach, expect, test, vi } from 'vitest';
import { NO_RATINGS } from '../../src/atlas/no-ratings.ts';
import { loadRatings } from '../../src/atlas/ratings-cache.ts';
import type { KeptWork } from '../../src/ratings/kept-work.ts';
import { exampleVenue } from '../domain/example-venue.ts';

const { now } = vi.hoisted(() => ({ now: { code: 'as it is', fits: [] as object[] } }));
vi.mock('../../src/atlas/code-digest.ts', () => ({ codeDigest: async () => now.code }));
vi.mock('../../src/atlas/rate-in-threads.ts', () => ({
  rateInThreads: async (_: unknown, { keepWork, ...options }: { keepWork?: (work: KeptWork) => void }) => {
    now.fits.push(options);
    keepWork?.({ 'a month': { past: 'digest', forecasts: [] } } as never);
    return NO_RATINGS;
  },
}));

let folder: string;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'peg-atlas-code-'));
});
afterAll(() => rm(folder, { recursive: true }));
beforeEach(() => {
  now.fits = [];
});

const venue = exampleVenue();
const more = exampleVenue({ retired: [{ ...exampleVenue().pegs[0]!, id: 'gone' }] });

test('reads ratings back only where the very code that made them stands', async () => {
  await loadRatings(venue, { folder });
  await loadRatings(venue, { folder });
  expect(now.fits).toHaveLength(1);
  now.code = 'changed';
  await loadRatings(venue, { folder });
  expect(now.fits).toHaveLength(2);
});

test('hands the work of the last run on to the same code, never to another', async () => {
  now.code = 'as it is';
  await loadRatings(more, { folder });
  now.code = 'changed again';
  await loadRatings(venue, { folder });
  now.code = 'as it is';
  await rm(folder, { recursive: true });
  await loadRatings(venue, { folder });
  await loadRatings(more, { folder });
  expect(now.fits.map((options) => 'work' in options)).toEqual([false, false, false, true]);
});
