import { mkdir, mkdtemp, readdir, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import sharp from 'sharp';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { photoSet } from '../../src/atlas/photo-store.ts';
import { makePhotoCopies, publishedPhotos } from '../../src/atlas/published-photos.ts';
import { examplePeg } from '../domain/example-venue.ts';

let folder: string;
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'peg-atlas-photos-'));
  await mkdir(join(folder, 'photos'));
  vi.stubEnv('PEG_ATLAS_CACHE', join(folder, 'cache'));
});
afterEach(async () => {
  vi.unstubAllEnvs();
  await rm(folder, { recursive: true });
});

test('photographs of records and of their hazards are published, each once', () => {
  const photo = (file: string) => ({ file, alt: 'A swim' });
  const pegs = [
    examplePeg('1', { photos: [photo('b.jpg'), photo('a.jpg')] }),
    examplePeg('2', { photos: [photo('a.jpg')] }),
  ];
  expect(publishedPhotos({ pegs }, folder)).toEqual(['a.jpg', 'b.jpg'].map((name) => join(folder, 'photos', name)));
});

test('copies are kept before a page asks for them, and a file that is no picture stops nothing', async () => {
  const file = join(folder, 'photos', 'swim.png');
  await writeFile(
    file,
    await sharp({ create: { width: 40, height: 30, channels: 3, background: '#357' } })
      .png()
      .toBuffer(),
  );
  await makePhotoCopies([file, join(folder, 'photos', 'none.png')]);
  const { copies } = await photoSet(file);
  expect((await readdir(join(folder, 'cache', 'photos'))).sort()).toEqual(copies.map(({ name }) => name).sort());
});
