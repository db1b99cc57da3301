import { mkdir, mkdtemp, readdir, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import sharp from 'sharp';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { photoBytes, photoSet } from '../../src/atlas/photo-store.ts';
import { photosInBackground } from '../../src/atlas/photos-in-background.ts';

let folder: string;
let picture: string;
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'peg-atlas-photos-'));
  vi.stubEnv('PEG_ATLAS_CACHE', join(folder, 'cache'));
  picture = join(folder, 'swim.png');
  const swim = sharp({ create: { width: 40, height: 30, channels: 3, background: '#357' } });
  await writeFile(picture, await swim.png().toBuffer());
});
afterEach(async () => {
  vi.unstubAllEnvs();
  await rm(folder, { recursive: true });
});

const kept = async () => (await readdir(join(folder, 'cache', 'photos')).catch(() => [])).sort();
const names = async () => (await photoSet(picture)).copies.map(({ name }) => name).sort();

test('a thread of its own keeps every copy where the pages look for it, and gives the bytes of this one', async () => {
  await photosInBackground([picture], new AbortController().signal);
  expect(await kept()).toEqual(await names());
  const elsewhere = join(folder, 'elsewhere');
  for (const copy of (await photoSet(picture)).copies) {
    expect(await photoBytes(picture, copy)).toEqual(await photoBytes(picture, copy, elsewhere));
  }
});

test('a copy that was lost is made again beside those that are kept', async () => {
  await photosInBackground([picture], new AbortController().signal);
  await rm(join(folder, 'cache', 'photos', (await names())[0]!));
  await photosInBackground([picture], new AbortController().signal);
  expect(await kept()).toEqual(await names());
});

test('a file that is no picture, or is not there, is left to the page that asks for it', async () => {
  const text = join(folder, 'text.png');
  await writeFile(text, 'no picture');
  await mkdir(join(folder, 'cache'));
  await photosInBackground([text, join(folder, 'none.png')], new AbortController().signal);
  expect(await kept()).toEqual([]);
});

test('nothing is begun that nobody waits for any more', async () => {
  await photosInBackground([picture], AbortSignal.abort());
  expect(await kept()).toEqual([]);
});
