import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { run as runAnglers } from '../../src/commands/anglers.ts';
import type { CommandIo, RunCommand } from '../../src/commands/command-io.ts';
import { run as runImport } from '../../src/commands/import.ts';
import { loadVenue } from '../../src/content/load-venue.ts';
import { venueOnDisk } from './intake/venue-on-disk.ts';

let home: string;
let folder: string;

beforeEach(() => {
  folder = venueOnDisk();
  home = dirname(folder);
});

afterEach(() => rmSync(home, { recursive: true, force: true }));

async function call(command: RunCommand, args: readonly string[], answers?: readonly string[]) {
  const lines: string[] = [];
  const left = [...(answers ?? [])];
  const io: CommandIo = {
    environment: { VENUE_DIR: folder, HOME: home },
    print: (line) => lines.push(line),
    printError: (line) => lines.push(line),
    isTerminal: answers !== undefined,
    ...(answers === undefined ? {} : { ask: async () => left.shift() ?? '' }),
  };
  const code = await command(args, io);
  return { code, said: lines.join('\n') };
}

function paper(name: string, text: string): string {
  const path = join(home, name);
  writeFileSync(path, text);
  return path;
}

/** Every file below a folder with its text. */
function everyFile(below: string): readonly (readonly [string, string])[] {
  return readdirSync(below, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => [join(entry.parentPath, entry.name), readFileSync(join(entry.parentPath, entry.name), 'latin1')]);
}

const SHEET = 'Mill Pond 11 October 2026\nPeg,Name,Weight\n1,Ada Quill,12-04\n2,Bo Reedmace,DNW\n';
const ANSWERS = 'all: { listing: full, places: 1, hours: 5, mark DNW: dnw }\n';
const sessions = (): string => readFileSync(join(folder, 'sessions/2026/sessions.csv'), 'utf8');

describe('import results', () => {
  it('writes nothing while a question is open, and says what to answer and where', async () => {
    const { code, said } = await call(runImport, ['results', paper('oct.csv', SHEET)]);
    expect(code).toBe(1);
    expect(said).toContain('What does "DNW" in the column of weights mean on these sheets?');
    expect(said).toMatch(/^ {4}mark DNW: dnw$/m);
    expect(said).toContain('Nothing was changed.');
    expect(existsSync(join(home, 'venue.import.yaml'))).toBe(false);
  });

  it('asks a person, takes the match in, and asks no more of the next sheet of that shape', async () => {
    const first = await call(runImport, ['results', paper('oct.csv', SHEET)], ['1', '1', '1', '5', 'y']);
    expect(first.code).toBe(0);
    expect(sessions()).toMatch(/2026-10-11-mill-pond,.*1,a-[0-9a-z]{8},weighed,12-04/);
    expect((await loadVenue(folder)).faults.filter(({ severity }) => severity === 'error')).toEqual([]);
    const next = SHEET.replace('11 October', '18 October').replace('12-04', '3-02');
    const second = await call(runImport, ['results', paper('oct2.csv', next)], ['1', '1', '5', 'y']);
    expect(second.code).toBe(0);
    expect(second.said).not.toContain('"DNW"');
    expect(second.said).toContain('0 new anglers');
  });

  it('adds nothing when the same sheet comes twice, and corrects its match when it was put right', async () => {
    paper('venue.import.yaml', ANSWERS);
    await call(runImport, ['results', paper('oct.csv', SHEET), '--yes']);
    const before = sessions();
    const again = await call(runImport, ['results', paper('oct.csv', SHEET), '--yes']);
    expect(again.said).toContain('nothing was changed');
    expect(sessions()).toBe(before);
    const right = await call(runImport, ['results', paper('oct.csv', SHEET.replace('12-04', '12-05')), '--yes']);
    expect(right.said).toContain('peg 1: weight 12-04 → 12-05');
    expect(sessions()).toBe(before.replace('12-04', '12-05'));
  });

  it('keeps what was typed beside a row when its sheet is corrected', async () => {
    paper('venue.import.yaml', ANSWERS);
    await call(runImport, ['results', paper('oct.csv', SHEET), '--yes']);
    const [head = '', ...rows] = sessions().trimEnd().split('\n');
    const withBait = rows.map((row) => (row.includes('12-04') ? `${row},caster` : `${row},`));
    writeFileSync(
      join(folder, 'sessions/2026/sessions.csv'),
      [`${head},bait2`.replace('bait2', head.includes('bait') ? 'lines' : 'bait'), ...withBait].join('\n'),
    );
    await call(runImport, ['results', paper('oct.csv', SHEET.replace('12-04', '12-05')), '--yes']);
    expect(sessions()).toMatch(/12-05.*caster/);
  });

  it('leaves no name in the folder, in the answers or in the register, and keeps the key to its owner', async () => {
    paper('venue.import.yaml', ANSWERS);
    const sheet = paper('oct.csv', SHEET);
    await call(runImport, ['results', sheet, '--yes']);
    for (const [path, text] of everyFile(home)) {
      if (path === sheet) continue;
      expect([path, /quill|reedmace/i.test(text)]).toEqual([path, false]);
    }
    const key = readdirSync(join(home, '.config/peg-atlas')).find((name) => name.endsWith('.key'))!;
    expect(statSync(join(home, '.config/peg-atlas', key)).mode & 0o077).toBe(0);
  });

  it('warns of a name of the sheet that stands in what is published', async () => {
    paper('venue.import.yaml', ANSWERS);
    mkdirSync(join(folder, 'notices'), { recursive: true });
    writeFileSync(
      join(folder, 'notices/2026-10-12-thanks.md'),
      '---\ntitle: Thanks\nkind: news\nfrom: 2026-10-12\n---\n\nThanks to Ada Quill.\n',
    );
    const { said } = await call(runImport, ['results', paper('oct.csv', SHEET), '--yes']);
    expect(said).toContain('notices/2026-10-12-thanks.md:7: warning: the text holds the name of somebody');
    expect(said).not.toContain('Quill');
  });

  it('warns of a paper whose own name is somebody’s, since its answers are kept under it', async () => {
    paper('venue.import.yaml', ANSWERS);
    const { said } = await call(runImport, ['results', paper('bo-reedmace-cup.csv', SHEET), '--yes']);
    expect(said).toContain('Paper 1 of these: warning: the name of the file holds that of somebody on it');
  });

  it('changes nothing where the log would not be valid any more', async () => {
    paper('venue.import.yaml', ANSWERS);
    const twice = `${SHEET}1,Cy Sedge,2-00\n`;
    const { code, said } = await call(runImport, ['results', paper('oct.csv', twice), '--yes']);
    expect(code).toBe(1);
    expect(said).toContain('The folder would not be valid any more:');
    expect(existsSync(join(folder, 'sessions/2026/sessions.csv')) && sessions().includes('2026-10-11')).toBe(false);
  });

  it.each([
    ['a file that is not there', ['results', 'nowhere.csv'], 'nowhere.csv. Nothing was changed.'],
    [
      'answers inside the folder',
      ['results', 'x.csv', '--answers', 'venue/answers.yaml'],
      'Answers are kept outside the venue folder',
    ],
    ['a key inside the folder', ['results', 'oct.csv', '--keys', 'venue/keys'], 'may not lie inside the venue folder'],
  ])('refuses %s in words', async (_, args, sentence) => {
    paper('oct.csv', SHEET);
    const placed = args.map((arg) => (/\.csv$|^venue\//.test(arg) ? join(home, arg) : arg));
    const { code, said } = await call(runImport, placed);
    expect(code).toBe(1);
    expect(said).toContain(sentence);
  });
});

describe('anglers', () => {
  const refs = (): readonly string[] => [...sessions().matchAll(/a-[0-9a-z]{8}/g)].map(([ref]) => ref);

  beforeEach(async () => {
    paper('venue.import.yaml', ANSWERS);
    await call(runImport, ['results', paper('oct.csv', SHEET), '--yes']);
  });

  it('finds a reference by a name in another spelling', async () => {
    const { said } = await call(runAnglers, ['who', 'QUILL,', 'A.']);
    expect(said).toContain(`${refs()[0]}  1 session, last on 2026-10-11`);
  });

  it('takes a person out of the log and the register', async () => {
    const [ref = ''] = refs();
    expect((await call(runAnglers, ['forget', ref, '--yes'])).code).toBe(0);
    for (const [path, text] of everyFile(home)) expect([path, text.includes(ref)]).toEqual([path, false]);
    expect((await call(runAnglers, ['who', 'Ada', 'Quill'])).code).toBe(1);
  });

  it('merges two references of one person, and never two who fished the same match', async () => {
    const [a = '', b = ''] = refs();
    expect((await call(runAnglers, ['merge', a, b, '--yes'])).said).toContain('they are two people');
    await call(
      runImport,
      [
        'results',
        paper(
          'nov.csv',
          SHEET.replace('October', 'November').replaceAll(/\n2.*/g, '').replace('Ada Quill', 'Adda Quayle'),
        ),
        '--yes',
      ],
      ['new', 'y'],
    );
    const c = refs().find((ref) => ref !== a && ref !== b)!;
    expect((await call(runAnglers, ['merge', c, a, '--yes'])).code).toBe(0);
    expect(refs()).not.toContain(c);
  });
});
