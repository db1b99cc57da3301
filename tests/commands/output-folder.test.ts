import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { outputFolder } from '../../src/commands/output-folder.ts';
import { UsageError } from '../../src/commands/read-arguments.ts';

const PROJECT = fileURLToPath(new URL('../..', import.meta.url));

let scratch: string;
let venue: string;

beforeEach(() => {
  scratch = mkdtempSync(join(tmpdir(), 'out-'));
  venue = join(scratch, 'venue');
  mkdirSync(join(venue, 'pegs'), { recursive: true });
});
afterEach(() => rmSync(scratch, { recursive: true }));

test('a guide goes into dist, a new folder, an empty one or the place of an earlier guide', () => {
  const guide = join(scratch, 'guide');
  expect(outputFolder(undefined, venue)).toBe(join(PROJECT, 'dist'));
  expect(outputFolder(guide, venue)).toBe(guide);
  mkdirSync(guide);
  expect(outputFolder(guide, venue)).toBe(guide);
  writeFileSync(join(guide, 'index.html'), '');
  writeFileSync(join(guide, 'offline-list.json'), '');
  expect(outputFolder(guide, venue)).toBe(guide);
  expect(outputFolder(join(scratch, 'venue-guide'), venue)).toBe(join(scratch, 'venue-guide'));
});

test('a guide never takes the place of the venue folder, of one that holds it or of one inside it', () => {
  for (const out of [venue, scratch, join(venue, 'guide'), join(venue, 'pegs', 'a', 'b')]) {
    expect(() => outputFolder(out, venue)).toThrow(UsageError);
  }
});

test('a link to the venue folder is no way round it', () => {
  const link = join(scratch, 'link');
  symlinkSync(venue, link);
  expect(() => outputFolder(link, venue)).toThrow(UsageError);
  expect(() => outputFolder(join(link, 'guide'), venue)).toThrow(UsageError);
  expect(() => outputFolder(venue, link)).toThrow(UsageError);
});

test('a guide never takes the place of the project, or of a folder or file with other things in it', () => {
  const photos = join(scratch, 'photos');
  mkdirSync(photos);
  writeFileSync(join(photos, 'wedding.jpg'), '');
  for (const out of [PROJECT, join(PROJECT, '..'), photos, join(photos, 'wedding.jpg')]) {
    expect(() => outputFolder(out, venue)).toThrow(UsageError);
  }
});
