import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { run as runAnglers } from '../../../src/commands/anglers.ts';
import { run as runBuild } from '../../../src/commands/build.ts';
import { run as runCheck } from '../../../src/commands/check.ts';
import { run as runImport } from '../../../src/commands/import.ts';
import { recordedIo } from '../recorded-io.ts';
import { AssociationOnDisk } from './association-on-disk.ts';

let waters: AssociationOnDisk;
let home: string;
let folder: string;

beforeEach(() => {
  waters = new AssociationOnDisk();
  ({ home, folder } = waters);
});
afterEach(() => waters.remove());

const put = (path: string, change: (text: string) => string) => waters.put(path, change);
const breakBirch = () => waters.breakBirch();

describe('check of an association', () => {
  it('tells the faults of each venue with the way to its file, and which are clean', async () => {
    breakBirch();
    const io = recordedIo();
    expect(await runCheck(['--venue', folder], io)).toBe(1);
    expect(io.errors.join('\n')).toContain(join(folder, 'birch/venue.md'));
    expect(io.errors.join('\n')).toMatch(/birch: \d+ errors?\./);
    expect(io.printed.join('\n')).toMatch(/alder is clean: 3 pegs/);
  });

  it('tells a program of each', async () => {
    breakBirch();
    const io = recordedIo();
    await runCheck(['--venue', folder, '--json'], io);
    const told = JSON.parse(io.printed.join('\n'));
    expect([told.ok, ...told.venues.map((each: { venue: string; ok: boolean }) => [each.venue, each.ok])]).toEqual([
      false,
      ['alder', true],
      ['birch', false],
    ]);
  });

  it.each([
    [
      'a name that is no step of an address',
      () => cpSync(join(folder, 'alder'), join(folder, 'Alder Two'), { recursive: true }),
      'Rename the folder. (association-folder)',
    ],
    [
      'a venue whose venue.md was lost',
      () => rmSync(join(folder, 'birch/venue.md')),
      'birch/venue.md:1:1 error Unexpected folder of pegs without it',
    ],
    [
      'no name',
      () => writeFileSync(join(folder, 'association.md'), '---\naddress: /guides/\n---\n'),
      'the name of the association',
    ],
    [
      'no venue',
      () => {
        for (const id of ['alder', 'birch']) rmSync(join(folder, id), { recursive: true });
      },
      'Begin one here with: npm run -s venue -- start FOLDER (association-empty)',
    ],
    [
      'a field there is none of',
      () => writeFileSync(join(folder, 'association.md'), '---\nname: A\nlogo: x.png\n---\n'),
      'logo',
    ],
  ])('finds %s', async (_, change, sentence) => {
    change();
    const io = recordedIo();
    expect(await runCheck(['--venue', folder], io)).toBe(1);
    expect(io.errors.join('\n')).toContain(sentence);
  });
});

describe('build of an association', () => {
  it.each([
    ['a folder of something else', ['notes.txt']],
    ['the guide of one venue', ['offline-list.json', 'index.html']],
  ])('refuses to write into %s', async (_, names) => {
    const out = mkdtempSync(join(home, 'out-'));
    for (const name of names) writeFileSync(join(out, name), 'x');
    await expect(runBuild(['--venue', folder, '--out', out], recordedIo())).rejects.toThrow('take away what is in it');
  });
});

describe('anglers of an association', () => {
  const SHEET = 'Mill Pond 11 October 2026\nPeg,Name,Weight\n1,Ada Quill,12-04\n';
  const log = (id: string) => readFileSync(join(folder, id, 'sessions/2026/sessions.csv'), 'utf8');
  const refOf = (id: string) => /2026-10-11.*(a-[0-9a-z]{8}),weighed,12-04/.exec(log(id))?.[1];
  const environment = () => ({ HOME: home });

  async function importBoth(): Promise<void> {
    writeFileSync(join(home, 'oct.csv'), SHEET);
    writeFileSync(join(home, 'answers.yaml'), 'all: { listing: full, places: 1, hours: 5 }\n');
    for (const id of ['alder', 'birch']) {
      const args = [
        'results',
        join(home, 'oct.csv'),
        '--venue',
        join(folder, id),
        '--answers',
        join(home, 'answers.yaml'),
        '--yes',
      ];
      expect(await runImport(args, recordedIo(environment()))).toBe(0);
    }
  }

  it('are one reference everywhere where the association says so, and are forgotten everywhere', async () => {
    put('association.md', (text) => text.replace('---\n\n', 'shared-anglers: true\n---\n\n'));
    put('birch/venue.md', (text) => text.replace('club: Example Angling Club', 'club: Birch Anglers'));
    await importBoth();
    const ref = refOf('alder')!;
    expect(refOf('birch')).toBe(ref);
    const io = recordedIo(environment());
    expect(await runAnglers(['forget', ref, '--yes', '--venue', join(folder, 'alder')], io)).toBe(0);
    expect(io.printed[0]).toContain('in 2 sessions');
    for (const id of ['alder', 'birch']) expect(log(id)).not.toContain(ref);
  });

  it('are strangers from club to club where it does not', async () => {
    put('birch/venue.md', (text) => text.replace('club: Example Angling Club', 'club: Birch Anglers'));
    await importBoth();
    expect(refOf('birch')).toMatch(/^a-/);
    expect(refOf('birch')).not.toBe(refOf('alder'));
  });
});
