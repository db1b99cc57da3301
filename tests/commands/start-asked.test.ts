import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { run as add } from '../../src/commands/add.ts';
import { run as importPapers } from '../../src/commands/import.ts';
import { run as start } from '../../src/commands/start.ts';
import { loadVenue } from '../../src/content/load-venue.ts';
import { recordedIo } from './recorded-io.ts';

const ANSWERS = {
  name: 'Alder Lakes',
  club: 'Alder Vale Angling Society',
  waters: 'Long Pool, The Mere',
  lengths: 'ft',
  weights: 'lb',
  parts: 'silvers, F1s, carp',
  'overhead lines': 'not-looked',
  'pegs of Long Pool': '24',
  'pegs of The Mere': '1-8, 9a',
};

let root: string;
const folder = () => join(root, 'content');
const answerFile = () => join(root, 'answers.yaml');
const answer = (answers: object) => writeFileSync(answerFile(), JSON.stringify({ all: answers }));
const startHere = (io = recordedIo(), ...more: string[]) =>
  start([folder(), '--answers', answerFile(), '--day', '2026-11-20', ...more], io);

beforeEach(() => {
  root = mkdtempSync(join(tmpdir(), 'start-'));
  answer(ANSWERS);
});
afterEach(() => rmSync(root, { recursive: true }));

test('answers become a folder that checks, whose pegs stand in for themselves', async () => {
  expect(await startHere()).toBe(0);
  const { venue, faults } = await loadVenue(folder());
  expect(faults.map(({ rule, severity }) => [rule, severity])).toEqual([
    ['lines-surveyed', 'warning'],
    ['lines-surveyed', 'warning'],
  ]);
  expect(venue?.settings).toMatchObject({ name: 'Alder Lakes', invented: true, guideDay: '2026-11-20' });
  expect(venue?.settings.bagParts.map(({ id }) => id)).toEqual(['silvers', 'f1s', 'carp']);
  expect(venue?.pegs).toHaveLength(33);
});

test('a real venue is refused while a peg stands in for itself, and taken once its place is known', async () => {
  await startHere();
  const settings = join(folder(), 'venue.md');
  writeFileSync(settings, readFileSync(settings, 'utf8').replace(/^invented: true.*\n/m, ''));
  const before = await loadVenue(folder());
  expect(before.faults.filter(({ severity }) => severity === 'error').map(({ rule }) => rule)).toEqual(
    Array.from({ length: 33 }, () => 'placeholder-position'),
  );
  for (const path of readdirSync(join(folder(), 'pegs'), { recursive: true, encoding: 'utf8' })) {
    if (!path.endsWith('.md')) continue;
    const record = join(folder(), 'pegs', path);
    writeFileSync(record, readFileSync(record, 'utf8').replace(', placeholder: true', ''));
  }
  expect((await loadVenue(folder())).venue).not.toBeNull();
});

test('an import of places puts a peg where it is, leaves what it faces to the shore and takes the placeholder away', async () => {
  await startHere();
  const table = join(root, 'pegs.csv');
  writeFileSync(table, 'peg,water,lat,lng\n1,Long Pool,52.700365,-0.0195\n');
  expect(await importPapers(['places', table, '--venue', folder(), '--yes'], recordedIo())).toBe(0);
  const record = readFileSync(join(folder(), 'pegs/long-pool/1.md'), 'utf8');
  expect(record).toContain('lat: 52.700365');
  expect(record).not.toContain('placeholder');
  // Until somebody has looked, the shore tells what it faces, and every place that shows it says so.
  expect(record).not.toContain('facing');
  const moved = (await loadVenue(folder())).venue!.pegs.find(({ water, peg }) => water === 'long-pool' && peg === '1')!;
  expect([Math.round(moved.facingDegrees), moved.isFacingEstimated]).toEqual([180, true]);
});

test('a drawn shore takes the stand-ins along, and a water called after trees is a water', async () => {
  answer({ ...ANSWERS, waters: 'Alder Pool', 'pegs of Alder Pool': '6' });
  await startHere();
  const ring = [
    [-1.5, 52.5],
    [-1.4985, 52.5],
    [-1.4985, 52.5006],
    [-1.5, 52.5006],
    [-1.5, 52.5],
  ];
  const drawing = join(root, 'drawing.geojson');
  const shape = {
    type: 'Feature',
    properties: { name: 'Alder Pool' },
    geometry: { type: 'Polygon', coordinates: [ring] },
  };
  writeFileSync(drawing, JSON.stringify({ type: 'FeatureCollection', features: [shape] }));
  expect(await importPapers(['places', drawing, '--venue', folder(), '--yes'], recordedIo())).toBe(0);
  const { venue, faults } = await loadVenue(folder());
  expect(faults.map(({ rule }) => rule)).toEqual(['lines-surveyed']);
  expect(venue?.pegs).toHaveLength(6);
  for (const { at } of venue!.pegs) expect([Math.round(at.lat), Math.round(at.lng)]).toEqual([53, -1]);
  expect(readFileSync(join(folder(), 'pegs/alder-pool/6.md'), 'utf8')).toContain('placeholder: true');
});

test('questions that are open are told all at once, with what to write, and nothing is written', async () => {
  answer({ name: 'Alder Lakes', weights: 'stones' });
  const io = recordedIo();
  expect(await startHere(io)).toBe(1);
  const said = io.errors.join('\n');
  expect(said).toContain('unexpected "stones"');
  for (const key of ['club', 'waters', 'lengths', 'weights', 'parts', 'overhead lines'])
    expect(said).toContain(`\n    ${key}: `);
  expect(readdirSync(root)).toEqual(['answers.yaml']);
});

test('pegs beside a line that is known and not drawn are closed, those added later too', async () => {
  answer({ ...ANSWERS, 'overhead lines': 'known' });
  await startHere();
  expect(await add(['peg', 'long-pool', '30', '--venue', folder(), '--yes'], recordedIo())).toBe(0);
  const { venue, faults } = await loadVenue(folder());
  expect(faults.filter(({ severity }) => severity === 'error')).toEqual([]);
  expect(venue?.pegs).toHaveLength(34);
  expect(venue?.pegs.every(({ status, statusSince }) => status === 'closed' && statusSince === '2026-11-20')).toBe(
    true,
  );
});

test('where nobody found a line, the survey is on record', async () => {
  answer({
    ...ANSWERS,
    'overhead lines': 'none-found',
    'lines looked for on': '2026-11-01',
    'lines looked for by': 'Bailiff',
    'lines looked for how': 'walked: with the operator’s "plan"',
  });
  await startHere();
  expect((await loadVenue(folder())).faults).toEqual([]);
});

test('a water and pegs are added later, all or nothing', async () => {
  await startHere();
  const to = ['--venue', folder(), '--yes'];
  expect(await add(['water', 'New', 'Pit', '--pegs', '6', ...to], recordedIo())).toBe(0);
  expect(await add(['peg', 'long-pool', '25-27', '28a', ...to], recordedIo())).toBe(0);
  expect((await loadVenue(folder())).venue?.pegs).toHaveLength(33 + 6 + 4);
  for (const refused of [
    ['water', 'New Pit', '--pegs', '3'],
    ['peg', 'long-pool', '25'],
    ['peg', 'no-pool', '25'],
  ]) {
    expect(await add([...refused, ...to], recordedIo())).toBe(1);
  }
  await expect(add(['peg', 'long-pool', 'x', ...to], recordedIo())).rejects.toThrow('Unexpected "x"');
  await expect(add(['peg', 'long-pool', '40', '--at', 'here', ...to], recordedIo())).rejects.toThrow('--at');
});

test('a peg of a water that is on the map needs its place', async () => {
  await startHere();
  writeFileSync(
    join(folder(), 'pegs/the-mere/1.md'),
    readFileSync(join(folder(), 'pegs/the-mere/1.md'), 'utf8').replace(', placeholder: true', ''),
  );
  const io = recordedIo();
  expect(await add(['peg', 'the-mere', '20', '--venue', folder(), '--yes'], io)).toBe(1);
  expect(io.errors[0]).toContain('--at');
  expect(
    await add(['peg', 'the-mere', '20', '--at', '52.70999,-0.01996', '--venue', folder(), '--yes'], recordedIo()),
  ).toBe(0);
  expect(readFileSync(join(folder(), 'pegs/the-mere/20.md'), 'utf8')).not.toContain('facing');
  const looked = [
    'peg',
    'the-mere',
    '21',
    '--at',
    '52.70999,-0.01995',
    '--facing',
    'NNE',
    '--venue',
    folder(),
    '--yes',
  ];
  expect(await add(looked, recordedIo())).toBe(0);
  expect(readFileSync(join(folder(), 'pegs/the-mere/21.md'), 'utf8')).toContain('facing: NNE');
  await expect(add([...looked.slice(0, 2), '22', ...looked.slice(3)].with(6, 'up'), recordedIo())).rejects.toThrow(
    'Unexpected --facing "up"',
  );
});

test('--repo writes what a repository needs beside the folder, and keeps what is there', async () => {
  writeFileSync(
    join(root, 'package.json'),
    JSON.stringify({ name: 'ours', dependencies: { 'peg-atlas': 'file:peg.tgz' } }),
  );
  writeFileSync(join(root, '.gitignore'), 'ours\n');
  const io = recordedIo();
  expect(await startHere(io, '--repo')).toBe(0);
  expect(JSON.parse(readFileSync(join(root, 'package.json'), 'utf8'))).toMatchObject({
    name: 'ours',
    dependencies: { 'peg-atlas': 'file:peg.tgz' },
    scripts: { build: 'peg-atlas build', check: 'peg-atlas check', start: 'peg-atlas show', venue: 'peg-atlas' },
  });
  expect(readFileSync(join(root, '.gitignore'), 'utf8')).toBe('ours\n');
  expect(io.errors).toEqual(['.gitignore is there already and was left as it is.']);
  expect(readFileSync(join(root, '.build/publish.yaml'), 'utf8')).toContain('npx peg-atlas check');
  expect(JSON.parse(readFileSync(join(root, '.vscode/venue.code-snippets'), 'utf8'))).not.toEqual({});
});
