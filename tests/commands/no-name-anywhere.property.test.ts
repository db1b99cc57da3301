import { cpSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { run as importPapers } from '../../src/commands/import.ts';
import { run as start } from '../../src/commands/start.ts';
import { loadVenue } from '../../src/content/load-venue.ts';
import { bytesOf } from './intake/venue-on-disk.ts';
import { filesWithNames, type MadeUpSeason, madeUpSeason, SEASON_ANSWERS, VENUE_ANSWERS } from './made-up-season.ts';
import { type RecordedIo, recordedIo } from './recorded-io.ts';

let root: string;
let runs = 0;

beforeAll(async () => {
  root = mkdtempSync(join(tmpdir(), 'season-'));
  writeFileSync(join(root, 'answers.yaml'), JSON.stringify({ all: VENUE_ANSWERS }));
  const asked = ['--answers', join(root, 'answers.yaml'), '--day', '2026-11-20'];
  expect(await start([join(root, 'first'), ...asked], recordedIo())).toBe(0);
});
afterAll(() => rmSync(root, { recursive: true }));

/** A club's machine: the folder, and the settings and answers beside it. Papers lie elsewhere, since they do hold names. */
interface Machine {
  readonly home: string;
  readonly folder: string;
  readonly desk: string;
  readonly papers: readonly string[];
}

function machineWith(season: MadeUpSeason): Machine {
  runs += 1;
  const [home, desk] = [join(root, `home-${runs}`), join(root, `desk-${runs}`)];
  const folder = join(home, 'venue');
  cpSync(join(root, 'first'), folder, { recursive: true });
  mkdirSync(desk);
  writeFileSync(join(home, 'venue.import.yaml'), JSON.stringify({ all: SEASON_ANSWERS }));
  const papers = season.papers.map(({ file, bytes }) => {
    writeFileSync(join(desk, file), bytes);
    return join(desk, file);
  });
  return { home, folder, desk, papers };
}

/** Takes the papers in; who somebody is can only be one person, since no two surnames here sound alike. */
async function takeIn({ home, folder, papers }: Machine): Promise<RecordedIo> {
  const io: RecordedIo = Object.assign(recordedIo({ HOME: home }), { isTerminal: true, ask: async () => '1' });
  const code = await importPapers(['results', ...papers, '--venue', folder, '--yes'], io);
  expect([code, io.errors.slice(-8)]).toEqual([0, expect.anything()]);
  return io;
}

const order = (a: { readonly key: string }, b: { readonly key: string }): number => (a.key < b.key ? -1 : 1);

test('of any season of sheets no row is lost, none invented, weights stay to the gram, one person is one reference, and no name is kept', async () => {
  await fc.assert(
    fc.asyncProperty(madeUpSeason, async (season) => {
      const machine = machineWith(season);
      await takeIn(machine);
      const { venue, faults } = await loadVenue(machine.folder);
      expect(faults.filter(({ severity }) => severity === 'error')).toEqual([]);
      const dayOf = new Map(venue!.events.map(({ id, day }) => [id, day]));
      const read = venue!.sessions
        .map(({ event, water, peg, status, section = null, weightGrams = null, angler }) => ({
          key: `${dayOf.get(event)} ${water} ${peg} ${status} ${section}`,
          grams: weightGrams,
          angler: angler ?? null,
        }))
        .sort(order);
      const expected = season.sessions
        .map(({ day, water, peg, status, section, grams, person }) => ({
          key: `${day} ${water} ${peg} ${status} ${section}`,
          grams,
          person,
        }))
        .sort(order);
      expect(read.map(({ key }) => key)).toEqual(expected.map(({ key }) => key));
      const references = new Map<number, Set<string | null>>();
      expected.forEach(({ grams, person }, index) => {
        if (grams === null) expect(read[index]!.grams).toBeNull();
        else expect(Math.abs(read[index]!.grams! - grams)).toBeLessThan(0.5);
        references.set(person, (references.get(person) ?? new Set()).add(read[index]!.angler));
      });
      const sum = (rows: readonly { readonly grams: number | null }[]) =>
        rows.reduce((all, { grams }) => all + (grams ?? 0), 0);
      expect(Math.abs(sum(read) - sum(expected))).toBeLessThan(0.5);
      expect([...references.values()].map((own) => own.size)).toEqual([...references.values()].map(() => 1));
      expect(new Set([...references.values()].flatMap((own) => [...own])).size).toBe(references.size);

      expect(filesWithNames(machine.home)).toEqual([]);
      // The same search finds them where they are: a workbook is packed, a text is not.
      const areTexts = season.papers.filter(({ bytes }) => bytes[0] !== 0x50).length;
      if (areTexts > 0) expect(filesWithNames(machine.desk).length).toBeGreaterThan(areTexts);
      const before = bytesOf(machine.folder);
      expect((await takeIn(machine)).errors.join('\n')).toContain('nothing was changed');
      expect(bytesOf(machine.folder)).toEqual(before);
      rmSync(machine.home, { recursive: true });
    }),
    { numRuns: 25 },
  );
}, 240_000);
