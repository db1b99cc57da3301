import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { commandHelp } from '../../src/commands/command-help.ts';
import { EXIT, type RunCommand } from '../../src/commands/command-io.ts';
import { UsageError } from '../../src/commands/read-arguments.ts';
import { replacing } from '../content/small-venue.ts';
import { venueOnDisk } from './intake/venue-on-disk.ts';
import { recordedIo } from './recorded-io.ts';

const FOLDER = fileURLToPath(new URL('../../src/commands', import.meta.url));
const COMMAND = join(FOLDER, 'venue.ts');
const WORDS = [...readFileSync(COMMAND, 'utf8').matchAll(/^ {2}'?([a-z-]+)'?: \{\n {4}summary/gm)].map(
  ([, word]) => word!,
);

/** What each command that reads a venue is called with; those left out read none, or serve until they are stopped. */
const READS_A_VENUE: Readonly<Record<string, readonly string[]>> = {
  check: [],
  build: [],
  show: [],
  dev: [],
  ratings: [],
  plan: ['2026-12-06-winter', '--water', 'mill-pond', '--entries', '2'],
  league: ['2026-winter'],
  intake: [fileURLToPath(import.meta.url)],
  import: ['results', fileURLToPath(import.meta.url)],
  repeg: ['mill-pond', '1-2', '+1', '--from', '2026-05-03'],
  retire: ['mill-pond/1', '--from', '2026-05-03', '--why', 'Gone'],
  upgrade: [],
  anglers: ['who', 'Nobody'],
  add: ['peg', 'mill-pond', '3'],
  'safety-texts': [],
};
const OTHERS = ['serve', 'cards', 'plates', 'booklet', 'start', 'schema', 'version'];

let broken: string;
let cut: string;
beforeAll(() => {
  broken = venueOnDisk({ 'venue.md': replacing('units: { length: m', 'units: { length: furlong') });
  cut = mkdtempSync(join(tmpdir(), 'nothing-'));
});
afterAll(() => {
  rmSync(dirname(broken), { recursive: true });
  rmSync(cut, { recursive: true });
});

async function call(word: string, args: readonly string[], venue: string) {
  const { run } = (await import(join(FOLDER, `${word}.ts`))) as { run: RunCommand };
  const io = recordedIo({ VENUE_DIR: venue, HOME: cut });
  const before = process.env.VENUE_DIR;
  try {
    return { code: await run(args, io), said: [...io.errors, ...io.printed].join('\n') };
  } catch (error) {
    if (!(error instanceof UsageError)) throw error;
    return { code: EXIT.usage, said: error.message };
  } finally {
    // `dev` and `build` tell the pages of it so.
    if (before === undefined) delete process.env.VENUE_DIR;
    else process.env.VENUE_DIR = before;
  }
}

test('every command is walked here', () => {
  expect([...Object.keys(READS_A_VENUE), ...OTHERS].sort()).toEqual([...WORDS].sort());
});

describe.each(WORDS)('%s', (word) => {
  test('answers an option nobody knows with exit code 2, and each of its own with none', async () => {
    expect(await call(word, ['--furlong'], cut)).toMatchObject({
      code: EXIT.usage,
      said: expect.stringContaining('--furlong'),
    });
    const options = [...(commandHelp(word, '') ?? '').matchAll(/^ {2}(--[a-z-]+)( [A-Z])?/gm)];
    for (const [, option, value] of options) {
      const given = [option!, ...(value === undefined ? [] : ['x']), '--furlong'];
      const { said } = await call(word, given, cut);
      expect([option, said.includes("'--furlong'")]).toEqual([option, true]);
    }
  });

  test('gives an example of its own options alone', () => {
    const help = commandHelp(word, '') ?? '';
    const example = /^Example: .*$/m.exec(help)?.[0] ?? '';
    for (const [option] of example.matchAll(/--[a-z-]+/g)) {
      expect([option, help.includes(`  ${option}`)]).toEqual([option, true]);
    }
  });
});

describe.each(Object.entries(READS_A_VENUE))('%s', (word, args) => {
  test('tells of a folder with faults, or of none at all, in words and with exit code 1', async () => {
    const nowhere = await call(word, args, join(cut, 'none'));
    expect([nowhere.code, nowhere.said]).toEqual([EXIT.faults, expect.stringMatching(/./)]);
    const faults = await call(word, args, broken);
    expect([faults.code, faults.said]).toEqual([EXIT.faults, expect.stringMatching(/./)]);
    for (const { said } of [nowhere, faults]) expect(said).not.toMatch(/^\s+at .*:\d+/m);
  });
});

test('a fault of the program’s own ends with exit code 3, in a sentence and without a stack', () => {
  const breaks = 'data:text/javascript,JSON.stringify=()=>{throw new TypeError("the tide is out")}';
  const { status, stderr } = spawnSync(process.execPath, ['--import', breaks, COMMAND, 'version', '--json'], {
    encoding: 'utf8',
  });
  expect([status, stderr]).toEqual([
    EXIT.program,
    expect.stringContaining('A fault of the program itself, not of your files: the tide is out'),
  ]);
  expect(stderr).not.toMatch(/^\s+at .*:\d+/m);
});
