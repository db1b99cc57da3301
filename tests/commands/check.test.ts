import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { run } from '../../src/commands/check.ts';
import { FILE, type FileChange, replacing, smallVenue } from '../content/small-venue.ts';
import { recordedIo } from './recorded-io.ts';

let folder: string;

beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'venue-'));
});

afterEach(() => rm(folder, { recursive: true, force: true }));

async function write(changes: Readonly<Record<string, FileChange>> = {}): Promise<void> {
  for (const [path, text] of smallVenue(changes).texts) {
    await mkdir(dirname(join(folder, path)), { recursive: true });
    await writeFile(join(folder, path), text);
  }
}

test('finds a good folder clean, named by the option or the variable', async () => {
  await write();
  for (const [args, environment] of [
    [['--venue', folder], {}],
    [[], { VENUE_DIR: folder }],
  ] as const) {
    const io = recordedIo(environment);
    expect(await run(args, io)).toBe(0);
    expect(io.printed).toEqual([`${folder} is clean: 1 water, 3 pegs, 1 event, 3 sessions, 2 soundings.`]);
    expect(io.errors).toEqual([]);
  }
});

test('prints every fault with its place, and exits 1', async () => {
  await write({ [FILE.sessions]: replacing('23-08', '23-17'), [FILE.peg]: replacing('facing: 0', 'facing: deep') });
  const io = recordedIo();
  expect(await run(['--venue', folder], io)).toBe(1);
  expect(io.printed).toEqual([]);
  expect(io.errors).toEqual([
    `${folder}/pegs/mill-pond/1.md:5:9 error Unexpected "deep" for facing, expected degrees from true north, 0 to 360, or a point such as NNE. Write degrees clockwise from true north, or one of the sixteen points. (bearing)`,
    `${folder}/sessions/2026/sessions.csv:2:43 error Unexpected "23-17" for weight, expected ounces from 0 to 15 after the pounds. 16 oz are a pound: 23-17 would be 24-01, if that is what was weighed. (weight-ounces)`,
    '2 errors.',
    'Read 1 water, 3 pegs, 1 event, 2 sessions, 2 soundings. Nothing is published until the errors are mended.',
  ]);
});

test('prints one JSON document where it is asked to', async () => {
  await write({ [FILE.sessions]: replacing('23-08', '23-17'), [FILE.gauge]: (text) => `${text},,\n` });
  const io = recordedIo();
  expect(await run(['--json', '--venue', folder], io)).toBe(1);
  expect(io.errors).toEqual([]);
  expect(JSON.parse(io.printed.join('\n'))).toMatchObject({
    ok: false,
    counts: { pegs: 3, sessions: 2 },
    faults: [
      {
        file: 'sessions/2026/sessions.csv',
        line: 2,
        column: 43,
        field: 'weight',
        rule: 'weight-ounces',
        found: '"23-17"',
        severity: 'error',
      },
    ],
    leftOut: [{ file: 'gauge/mill-pond.csv', line: 4, what: 'an empty row' }],
  });
});

test('finds a folder with warnings alone clean, and shows them', async () => {
  await write({ [FILE.peg]: replacing('facing: 0', 'facing: S') });
  const io = recordedIo();
  expect(await run(['--venue', folder], io)).toBe(0);
  expect(io.errors.at(-1)).toBe('1 warning.');
});

test('says once that a folder is not there', async () => {
  const io = recordedIo();
  expect(await run(['--venue', join(folder, 'nowhere')], io)).toBe(1);
  expect(io.errors).toEqual([
    `${join(folder, 'nowhere')} error Found no such folder, expected a venue folder. Name a folder with --venue, or begin one with: npm run -s venue -- start FOLDER (folder-missing)`,
    '1 error.',
  ]);
});

test('refuses an option it does not know', async () => {
  await expect(run(['--jsn'], recordedIo())).rejects.toThrow('--jsn');
});
