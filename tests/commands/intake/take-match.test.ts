import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { EXIT } from '../../../src/commands/command-io.ts';
import { run } from '../../../src/commands/intake.ts';
import { loadVenue } from '../../../src/content/load-venue.ts';
import { matchFileText } from '../../../src/match-day/match-file.ts';
import { type Note, noteOf } from '../../../src/match-day/match-log.ts';
import { ABOUT } from '../../../src/match-day/scales.ts';
import { writeFiles, writeVenue } from '../../demo/write-venue.ts';
import { recordedIo } from '../recorded-io.ts';

let folder: string;
let scratch: string;
let venue: string;
let pegs: readonly string[];

beforeAll(async () => {
  scratch = mkdtempSync(join(tmpdir(), 'peg-atlas-take-match-'));
  folder = join(scratch, 'venue');
  writeVenue({ seed: 3, waters: 1, pegs: 30, anglers: 20, events: 6, soundings: 40 }, folder);
  const { venue: read } = await loadVenue(folder);
  venue = read!.settings.name;
  pegs = read!.pegs
    .filter(({ status }) => status === 'open')
    .slice(0, 4)
    .map(({ water, peg }) => `${water}/${peg}`);
  const [a, b, c, d] = pegs;
  writeFiles(
    new Map([
      [
        'matches/2026-12-06-pairs.md',
        `---\nname: Pairs\ndate: 2026-12-06\nwaters: [${a!.split('/')[0]}]\nentries: 4\nsections: 2\npegs:\n  A: [${a}, ${b}]\n  B: [${c}, ${d}]\n---\n`,
      ],
    ]),
    folder,
  );
});
afterAll(() => rmSync(scratch, { recursive: true }));

async function fileOf(
  weights: readonly number[],
  changes: { readonly match?: string; readonly venue?: string } = {},
): Promise<string> {
  const notes: Note[] = [];
  for (const [i, grams] of weights.entries()) {
    const said = { status: 'weighed', nets: [grams], fish: {} };
    notes.push(noteOf(notes, 'a1', ABOUT.scales(pegs[i]!), said, '2026-12-06T15:00:00Z'));
  }
  return matchFileText({ match: '2026-12-06-pairs', venue, phone: 'a1', hasNames: false, notes, ...changes });
}

async function intake(...texts: string[]) {
  const paths = texts.map((text, i) => {
    const path = join(scratch, `match-${i}.txt`);
    writeFileSync(path, text);
    return path;
  });
  const io = recordedIo({ VENUE_DIR: folder });
  const code = await run([...paths, '--yes'], io);
  return { code, printed: io.printed.join('\n'), errors: io.errors.join('\n') };
}

test('refuses an edited file, one that was cut off, and one of another match or venue, and changes nothing', async () => {
  const before = readFileSync(join(folder, 'sessions/2026/sessions.csv'), 'utf8');
  const whole = await fileOf([1000]);
  expect((await intake(whole.replace('1000', '9000'))).errors).toContain('was changed since the phone handed it over');
  expect((await intake(whole.slice(0, -20))).errors).toContain('cut off or changed on the way');
  expect((await intake(await fileOf([1000], { match: '2026-01-01-other' }))).errors).toContain('has no such match');
  expect((await intake(await fileOf([1000], { venue: 'Elsewhere' }))).errors).toContain('at Elsewhere');
  expect((await intake(whole, await fileOf([1000], { match: '2026-01-01-other' }))).errors).toContain(
    'files are of two matches',
  );
  expect(readFileSync(join(folder, 'sessions/2026/sessions.csv'), 'utf8')).toBe(before);
});

test('takes a match in, the same file again changes nothing, and a corrected weight replaces the old', async () => {
  const first = await intake(await fileOf([1000, 2000, 3000, 4000]));
  expect(first.code).toBe(EXIT.clean);
  expect(first.printed).toContain('new, 4 sessions');
  const { venue: read, faults } = await loadVenue(folder);
  expect(faults.filter(({ severity }) => severity === 'error')).toEqual([]);
  expect(read!.settings.guideDay).toBe('2026-12-06');
  expect(read!.matches![0]!.status).toBe('fished');
  expect((await intake(await fileOf([1000, 2000, 3000, 4000]))).errors).toContain('nothing new');
  const corrected = await intake(await fileOf([1500, 2000, 3000, 4000]));
  expect(corrected.printed).toContain('corrected, 4 sessions');
  const after = (await loadVenue(folder)).venue!;
  const event = after.events.find(({ day }) => day === '2026-12-06')!;
  const own = after.sessions.filter((session) => session.event === event.id);
  expect(own).toHaveLength(4);
  expect(own.map(({ weightGrams }) => Math.round(weightGrams!)).sort()).toEqual(
    [1500, 2000, 3000, 4000].map((grams) => Math.round(Math.round(grams / 1.7718451953125) * 1.7718451953125)),
  );
});

test('takes the files of two scales that both wrote one net down once, and refuses a round or a slip beside them by name', async () => {
  const said = { status: 'weighed', nets: [{ grams: 2500, part: null }], fish: {} };
  const fileBy = (phone: string) =>
    matchFileText({
      match: '2026-12-06-pairs',
      venue,
      phone,
      hasNames: false,
      notes: [
        noteOf([], phone, ABOUT.scales(pegs[0]!), said, phone === 'a1' ? '2026-12-06T15:00Z' : '2027-12-06T15:00Z'),
      ],
    });
  const both = await intake(await fileBy('a1'), await fileBy('b2'));
  expect(both.code).toBe(EXIT.clean);
  expect(both.printed).toContain('corrected, 1 session');
  const mixed = await intake(await fileBy('a1'), '{"format":"bank-round"}');
  expect(mixed.code).toBe(EXIT.faults);
  expect(mixed.errors).toContain('match-1.txt: It is no file of a match day.');
});

test('does not let a second match of the day on a water replace the rows of the first', async () => {
  const plan = readFileSync(join(folder, 'matches/2026-12-06-pairs.md'), 'utf8');
  writeFiles(
    new Map([
      ['matches/2026-12-06-evening.md', plan.replace('name: Pairs', 'name: Evening').replace('status: fished\n', '')],
    ]),
    folder,
  );
  const before = readFileSync(join(folder, 'sessions/2026/sessions.csv'), 'utf8');
  const refused = await intake(await fileOf([900], { match: '2026-12-06-evening' }));
  expect(refused.code).toBe(EXIT.faults);
  expect(refused.errors).toContain('Pairs of the same day is in the log for the same water');
  expect(readFileSync(join(folder, 'sessions/2026/sessions.csv'), 'utf8')).toBe(before);
});
