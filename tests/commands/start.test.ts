import { mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { run } from '../../src/commands/start.ts';
import { firstVenue } from '../../src/content/first-venue.ts';
import { loadVenue } from '../../src/content/load-venue.ts';
import { recordedIo } from './recorded-io.ts';

let folder: string;

beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'venue-'));
});

afterEach(() => rm(folder, { recursive: true, force: true }));

test('writes a folder that passes every check, and asks for a survey of the lines alone', async () => {
  const io = recordedIo();
  expect(await run([join(folder, 'ours'), '--day', '2026-11-21'], io)).toBe(0);
  expect(io.printed[0]).toContain('Every name and figure in it is an example: replace them.');
  const { venue, faults, leftOut } = await loadVenue(join(folder, 'ours'));
  // Nobody has looked for overhead lines at a water that is made up: that is asked for, and nothing else.
  expect([faults.map(({ rule }) => rule), leftOut]).toEqual([['lines-surveyed'], []]);
  expect(venue).toMatchObject({
    settings: { guideDay: '2026-11-21', invented: true },
    pegs: [{ peg: '1' }, { peg: '2' }],
  });
});

test('says in every record that its figures are examples', () => {
  const records = [...firstVenue('2026-11-21')].filter(([path]) => /\.(?:md|geojson)$/.test(path));
  expect(records.length).toBeGreaterThan(4);
  for (const [path, text] of records) expect(text, path).toMatch(/example/i);
});

test('shows fields that hold once their mark is taken away', async () => {
  await run([folder], recordedIo());
  for (const path of ['pegs/first-water/1.md', 'venue.md', 'waters/first-water.md']) {
    const text = await readFile(join(folder, path), 'utf8');
    await writeFile(
      join(folder, path),
      text.replaceAll(/^# (?=[a-z-]+: )|^# (?=hazards:| {2}- )|^ {2}# (?=[a-z-]+: )/gm, (mark) =>
        mark.replace('# ', ''),
      ),
    );
  }
  const { venue, faults } = await loadVenue(folder);
  expect(faults).toEqual([]);
  expect(venue?.pegs[0]?.hazards).toHaveLength(1);
  expect(venue?.pegs[0]?.platform?.widthMetres).toBe(1.8);
});

test('touches nothing in a folder that holds something', async () => {
  await writeFile(join(folder, 'ours.txt'), 'x');
  const io = recordedIo();
  expect(await run([folder], io)).toBe(1);
  expect(io.errors).toEqual([`${folder} already holds ours.txt. Name a folder that is new or empty.`]);
  expect(await readdir(folder)).toEqual(['ours.txt']);
});

test('touches no file that stands in the place of the folder', async () => {
  await writeFile(join(folder, 'file'), 'x');
  const io = recordedIo();
  expect(await run([join(folder, 'file')], io)).toBe(1);
  expect(io.errors[0]).toContain('is a file');
});

test('asks for one folder and a day that exists', async () => {
  await expect(run([], recordedIo())).rejects.toThrow('Expected one folder');
  await expect(run([folder, '--day', '2026-02-30'], recordedIo())).rejects.toThrow('Unexpected day');
});
