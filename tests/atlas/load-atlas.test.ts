import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, it, vi } from 'vitest';

let folder: string;
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'peg-atlas-venue-'));
  vi.stubEnv('VENUE_DIR', folder);
  // The promise is made once a build: each test is a build of its own.
  vi.resetModules();
});
afterEach(async () => {
  vi.unstubAllEnvs();
  await rm(folder, { recursive: true, force: true });
});

it('stops a build of a folder with faults, and says every one of them', async () => {
  await writeFile(join(folder, 'venue.md'), '---\nname: Pit\nunits: { length: yd, weight: lb }\n---\n');
  const { loadAtlas } = await import('../../src/atlas/load-atlas.ts');
  const message = await loadAtlas().then(
    () => '',
    (error: Error) => error.message,
  );
  expect(message).toContain(folder);
  expect(message).toContain('venue.md:3:');
  expect(message.split('\n').length).toBeGreaterThan(3);
});

it('reads the folder once, however many pages ask', async () => {
  const { loadAtlas } = await import('../../src/atlas/load-atlas.ts');
  const first = loadAtlas();
  expect(loadAtlas()).toBe(first);
  await expect(first).rejects.toThrow('folder-empty');
});
