import { mkdirSync, readFileSync, rmSync, truncateSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import sharp from 'sharp';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { CommandIo } from '../../src/commands/command-io.ts';
import { run } from '../../src/commands/intake.ts';
import { contentHash } from '../../src/content/folder-change/journal.ts';
import { loadVenue } from '../../src/content/load-venue.ts';
import type { RoundFile } from '../../src/content/round-file/round-file.ts';
import { bytesOf, findingAt, fullRound, roundFile, roundOf, venueOnDisk } from './intake/venue-on-disk.ts';

let folder: string;

beforeEach(() => {
  folder = venueOnDisk();
});

afterEach(() => rmSync(dirname(folder), { recursive: true, force: true }));

interface Outcome {
  readonly code: number;
  readonly said: string;
}

/** Runs the command; `answers` are typed one after the other where a person is asked. */
async function intake(args: readonly string[], answers?: readonly string[]): Promise<Outcome> {
  const lines: string[] = [];
  const left = [...(answers ?? [])];
  const io: CommandIo = {
    environment: { VENUE_DIR: folder },
    print: (line) => lines.push(line),
    printError: (line) => lines.push(line),
    isTerminal: answers !== undefined,
    ...(answers === undefined
      ? {}
      : {
          ask: async (question) => {
            lines.push(question);
            return left.shift() ?? '';
          },
        }),
  };
  const code = await run(args, io);
  return { code, said: lines.join('\n') };
}

const text = (path: string): string => readFileSync(join(folder, path), 'utf8');

describe('taking a round in', () => {
  it('shows what would change and writes nothing unless it is told to', async () => {
    const before = bytesOf(folder);
    const { code, said } = await intake([roundFile(folder, await fullRound(folder))]);
    expect(code).toBe(1);
    expect(said).toMatchInlineSnapshot(`
      "Round w3lkab of 22 Nov 2026, Example Fishery: 3 pegs, 1 photo
        mill-pond/1
          status: open → closed (The bank has slipped)
          clearance.clear-width: 3.5 m
          clearance.measured-on: 2026-11-22
          hazard barbed-wire (left of the platform): found 2026-11-22, severity 3 × likelihood 2
          note to the club: <script>alert(1)</script>
          photo: mill-pond-1-w3lkab-1.jpg
        mill-pond/2
          hazard slippery (the steps): found 2026-03-01 → cleared 2026-11-22
        mill-pond/10
          platform.condition: worn
          platform.inspected-on: 2026-11-22
          hazard slippery (the steps): checked 2026-11-01 → checked 2026-11-22
        gauge/mill-pond.csv
          2026-11-22: level 0.12 m, water 6.5 °C
        venue.md
          guide-day: 2026-11-21 → 2026-11-22
      Nothing was changed. Add --yes to take this in without being asked."
    `);
    expect(bytesOf(folder)).toEqual(before);
  });

  it('writes everything, and the folder stays valid', async () => {
    const { code, said } = await intake([roundFile(folder, await fullRound(folder)), '--yes']);
    expect(said).toContain('Taken in: round w3lkab');
    expect(code).toBe(0);
    const { venue, faults } = await loadVenue(folder);
    expect(faults).toEqual([]);
    const pegs = new Map(venue?.pegs.map((peg) => [peg.peg, peg]));
    expect(pegs.get('1')).toMatchObject({
      status: 'closed',
      statusReason: 'The bank has slipped',
      statusSince: '2026-11-22',
    });
    expect(pegs.get('1')?.hazards.at(-1)).toEqual({
      kind: 'barbed-wire',
      place: 'left of the platform',
      severity: 3,
      likelihood: 2,
      foundOn: '2026-11-22',
      checkedOn: '2026-11-22',
      round: 'w3lkab',
      photo: 'mill-pond-1-w3lkab-1.jpg',
    });
    expect(pegs.get('2')?.hazards[0]?.clearedOn).toBe('2026-11-22');
    expect(pegs.get('10')?.hazards[0]?.checkedOn).toBe('2026-11-22');
    expect(venue?.settings.guideDay).toBe('2026-11-22');
    expect(venue?.gauge.at(-1)).toEqual({
      water: 'mill-pond',
      day: '2026-11-22',
      levelMetres: 0.12,
      waterDegreesC: 6.5,
    });
    const round = venue?.rounds.find(({ ref }) => ref === 'w3lkab');
    expect(round?.entries.map(({ entry }) => entry)).toEqual([
      'visit',
      'hazard-found',
      'clearance',
      'visit',
      'hazard-cleared',
      'visit',
      'hazard-checked',
      'gauge',
    ]);
    expect(round?.entries[0]?.note).toBe('Closed: The bank has slipped\n<script>alert(1)</script>');
  });

  it('keeps a photo as a picture and nothing else of it', async () => {
    await intake([roundFile(folder, await fullRound(folder)), '--yes']);
    const { format, width, exif } = await sharp(join(folder, 'photos/mill-pond-1-w3lkab-1.jpg')).metadata();
    expect({ format, width, exif }).toEqual({ format: 'jpeg', width: 64, exif: undefined });
  });

  it('asks first where a person can be asked', async () => {
    const before = bytesOf(folder);
    const file = roundFile(folder, await fullRound(folder));
    expect(await intake([file], ['n'])).toMatchObject({
      code: 0,
      said: expect.stringMatching(/Take this in\? \[y\/n\] \nNothing was changed\.$/),
    });
    expect(bytesOf(folder)).toEqual(before);
    expect((await intake([file], ['y'])).said).toContain('Taken in');
  });

  it('changes nothing the second time and says so', async () => {
    const file = roundFile(folder, await fullRound(folder));
    await intake([file, '--yes']);
    const once = bytesOf(folder);
    const { code, said } = await intake([file, '--yes']);
    expect({ code, said }).toEqual({
      code: 0,
      said: 'Round w3lkab of 2026-11-22 is in the folder already.\nThere is nothing new: nothing was changed.',
    });
    expect(bytesOf(folder)).toEqual(once);
  });

  it('takes several rounds in at once, the earlier first, or none of them', async () => {
    const first = roundOf({ ref: 'first1', day: '2026-11-22', pegs: [findingAt(folder, '1', { platform: 'worn' })] });
    const second = roundOf({ ref: 'second', day: '2026-11-23', pegs: [findingAt(folder, '1', { note: 'calm' })] });
    const files = [roundFile(folder, second, 'b.txt'), roundFile(folder, first, 'a.txt')];
    expect((await intake([...files, roundFile(folder, 'x', 'c.txt'), '--yes'])).code).toBe(1);
    expect(Object.keys(bytesOf(folder)).filter((path) => path.startsWith('rounds/'))).toHaveLength(1);
    expect((await intake([...files, '--yes'])).said).toContain('Taken in: round first1, round second');
  });
});

describe('where the folder changed since the round’s guide', () => {
  async function roundAfterEdit(): Promise<string> {
    const round = roundOf({ pegs: [findingAt(folder, '1', { status: 'closed', reason: 'slip', platform: 'worn' })] });
    writeFileSync(
      join(folder, 'pegs/mill-pond/1.md'),
      text('pegs/mill-pond/1.md').replace(
        'status: open',
        'status: closed\nstatus-since: 2026-10-01\nstatus-reason: works',
      ),
    );
    return roundFile(folder, round);
  }

  it('shows both values and overwrites nothing without a choice', async () => {
    const file = await roundAfterEdit();
    const before = bytesOf(folder);
    const { code, said } = await intake([file, '--yes']);
    expect(code).toBe(1);
    expect(said).toMatchInlineSnapshot(`
      "One field was changed in the folder after the guide the round was made from:
      mill-pond/1 status
        the round's guide said  open
        the folder says now     closed (works)
        the round says          closed (slip)
      Nothing was changed. Choose with --keep-folder or --take-round."
    `);
    expect(bytesOf(folder)).toEqual(before);
  });

  it('keeps the folder’s or takes the round’s, as told', async () => {
    const file = await roundAfterEdit();
    await intake([file, '--yes', '--keep-folder']);
    expect(text('pegs/mill-pond/1.md')).toContain('status-reason: works');
    expect(text('pegs/mill-pond/1.md')).toContain('condition: worn');
  });

  it('asks for each field, and stops where the person would rather not say', async () => {
    const file = await roundAfterEdit();
    const before = bytesOf(folder);
    expect((await intake([file], ['s'])).said).toMatch(/Nothing was changed\.$/);
    expect(bytesOf(folder)).toEqual(before);
    await intake([file], ['r', 'y']);
    expect(text('pegs/mill-pond/1.md')).toContain('status-reason: slip');
  });
});

describe('a distance to an overhead line that is inside the stand-off', () => {
  const measured = (): string =>
    roundFile(folder, roundOf({ pegs: [findingAt(folder, '1', { lineDistanceMetres: 22, lineMethod: 'wheel' })] }));

  it('is not taken in while the peg would stay open', async () => {
    const before = bytesOf(folder);
    const { code, said } = await intake([measured(), '--yes']);
    expect(code).toBe(1);
    expect(said).toContain('Inside the stand-off of an overhead line with what was measured, and open: mill-pond/1.');
    expect(said).toContain('--close-inside');
    expect(bytesOf(folder)).toEqual(before);
  });

  it('closes the peg with the intake where that is told or agreed to', async () => {
    expect((await intake([measured()], ['y', 'y'])).said).toContain('status: open → closed (Inside the stand-off');
    const { venue } = await loadVenue(folder);
    const peg = venue?.pegs.find((one) => one.peg === '1');
    expect(peg).toMatchObject({ status: 'closed', measuredLineDistance: { distanceMetres: 22, method: 'wheel' } });
    folder = venueOnDisk();
    expect((await intake([measured(), '--yes', '--close-inside'])).code).toBe(0);
  });
});

describe('what is refused, with nothing changed on the disk', () => {
  const cases: readonly (readonly [string, (round: RoundFile) => unknown, RegExp])[] = [
    ['a file cut short', (round) => JSON.stringify(round).slice(0, 300), /without its end.*cut short on its way/],
    ['a file of another kind', () => 'peg,depth\n1,2\n', /no bank round/],
    [
      'another venue’s round',
      (round) => ({ ...round, venue: { id: 'x', name: 'Other Lakes' } }),
      /round of Other Lakes/,
    ],
    [
      'a newer version',
      (round) => ({ ...round, version: 7 }),
      /version 7, expected version 2.*bring this one up to date/,
    ],
    [
      'a photo that is no picture',
      (round) => ({ ...round, photos: [{ ...round.photos[0], jpeg: btoa('<svg/>') }] }),
      /photo of peg mill-pond\/1 that is no picture.*\(round-photo\)/,
    ],
    [
      'a peg that is gone',
      (round) => ({ ...round, pegs: [...round.pegs, { ...round.pegs[1], peg: '77' }] }),
      /peg mill-pond\/77.*--without mill-pond\/77.*\(round-peg\)/,
    ],
    ['a day to come', (round) => ({ ...round, day: '2999-01-01' }), /1 Jan 2999.*clock of the phone/],
    [
      'an impossible value',
      (round) => ({ ...round, pegs: [{ ...round.pegs[0], clearWidthMetres: 'wide' }] }),
      /"wide" for pegs\[0\]\.clearWidthMetres, expected a number/,
    ],
    [
      'a path for a name',
      (round) => ({ ...round, pegs: [{ ...round.pegs[0], water: '../../etc' }] }),
      /pegs\[0\]\.water/,
    ],
  ];

  it.each(cases)('refuses %s', async (_, change, sentence) => {
    const file = roundFile(folder, change(await fullRound(folder)));
    const before = bytesOf(folder);
    const { code, said } = await intake([file, '--yes']);
    expect(code).toBe(1);
    expect(said).toMatch(sentence);
    expect(said).toMatch(/Nothing was changed\.$/);
    expect(said).not.toMatch(/^\s+at /m);
    expect(bytesOf(folder)).toEqual(before);
  });

  it('refuses 200 MB without reading them, and a file that is not there', async () => {
    const large = roundFile(folder, '');
    truncateSync(large, 200 * 1024 * 1024);
    const { code, said } = await intake([large, join(folder, 'none.txt'), '--yes']);
    expect(code).toBe(1);
    expect(said).toContain('Unexpected 200 MB, expected at most 64 MB.');
    expect(said).toContain('no such file');
    expect(said).toMatch(/\(round-size\)[\s\S]*\(round-missing\)/);
  });

  it('takes the rest of a round without a peg that is gone', async () => {
    const round = await fullRound(folder);
    const file = roundFile(folder, { ...round, pegs: [...round.pegs, { ...round.pegs[1], peg: '77' }] });
    expect((await intake([file, '--yes', '--without', 'mill-pond/77'])).code).toBe(0);
    expect(text('rounds/2026-11-22-w3lkab.csv')).not.toContain('77');
  });

  it('closes a peg that a match has planned: what closes a peg waits for no plan', async () => {
    mkdirSync(join(folder, 'matches'), { recursive: true });
    writeFileSync(
      join(folder, 'matches/2026-12-06-pairs.md'),
      '---\nname: Pairs\ndate: 2026-12-06\nwaters: [mill-pond]\nentries: 2\nplaces: 1\npegs:\n  A: [mill-pond/1, mill-pond/10]\n---\n',
    );
    const file = roundFile(folder, roundOf({ pegs: [findingAt(folder, '1', { status: 'closed', reason: 'slip' })] }));
    expect((await intake([file, '--yes'])).code).toBe(0);
    expect(text('pegs/mill-pond/1.md')).toContain('status: closed');
  });

  it('does not blame a round for faults that are in the folder already', async () => {
    writeFileSync(join(folder, 'pegs/mill-pond/2.md'), text('pegs/mill-pond/2.md').replace('facing: 0', 'facing: up'));
    const file = roundFile(folder, roundOf({ pegs: [findingAt(folder, '1', { status: 'closed', reason: 'slip' })] }));
    expect((await intake([file, '--yes'])).code).toBe(0);
    expect((await loadVenue(folder)).venue).toBeNull();
    expect(text('pegs/mill-pond/1.md')).toContain('status: closed');
  });

  it('takes nothing in while a stopped intake waits for a file that was edited since', async () => {
    const staged = join(folder, '.intake/change-1');
    mkdirSync(staged, { recursive: true });
    const after = 'lat,lng,depth,date\n';
    writeFileSync(join(staged, '0.new'), after);
    const hash = contentHash(new TextEncoder().encode(after));
    const entry = { path: 'soundings/mill-pond.csv', staged: '0.new', before: null, after: hash };
    writeFileSync(join(staged, 'committed.json'), JSON.stringify([entry]));
    const { code, said } = await intake([roundFile(folder, await fullRound(folder)), '--yes']);
    expect(code).toBe(1);
    expect(said).toContain('soundings/mill-pond.csv was edited');
  });
});
