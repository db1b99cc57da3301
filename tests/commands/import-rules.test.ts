import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { CommandIo } from '../../src/commands/command-io.ts';
import { run as runImport } from '../../src/commands/import.ts';
import { EXAMPLE_RULES } from '../../src/content/first-venue.ts';
import { loadVenue } from '../../src/content/load-venue.ts';
import { bytesOf, venueOnDisk } from './intake/venue-on-disk.ts';

let home: string;
let folder: string;

beforeEach(() => {
  folder = venueOnDisk();
  home = dirname(folder);
});

afterEach(() => rmSync(home, { recursive: true, force: true }));

/** Laid out as a club's card of rules is; the club and everybody in it are invented. */
const CARD = [
  'EXAMPLE ANGLING CLUB',
  '====================',
  '',
  'GENERAL RULES',
  '1. All members must carry a current rod licence and',
  '   show it to the bailiff.',
  '2. Keepnets:',
  '   (a) in matches only;',
  '   (b) not for carp over 5 lb <see the board>.',
  '3. No fishing within 20 yards of the overhead line.',
  '5. The following baits are banned:',
  '   • boilies',
  '   • floating bait',
  '',
  'DAY TICKETS',
  'From the Secretary, Ada Quill, on 01632 960 555 or ada@quill.example before you fish.',
  'Night fishing by permit of Mill Pond Fisheries.',
  '',
  'Page 1 of 2',
  '',
].join('\r\n');

const LEAVE_OUT = /^ {4}"?([^"\n]+?)"?: leave-out$/gm;

async function call(args: readonly string[], typed?: readonly string[]) {
  const lines: string[] = [];
  const left = [...(typed ?? [])];
  const io: CommandIo = {
    environment: { VENUE_DIR: folder, HOME: home },
    print: (line) => lines.push(line),
    printError: (line) => lines.push(line),
    isTerminal: typed !== undefined,
    ...(typed === undefined ? {} : { ask: async () => left.shift() ?? '' }),
  };
  return { code: await runImport(args, io), said: lines.join('\n') };
}

function paper(text: string, name = 'card.txt'): string {
  const path = join(home, name);
  writeFileSync(path, text);
  return path;
}

const venueFile = (): string => readFileSync(join(folder, 'venue.md'), 'utf8');
const rules = (): string => venueFile().split('\n---\n')[1]!.trim();

describe('import rules', () => {
  it('prints as JSON nothing that a terminal would take for a command or for the end of a line', async () => {
    const hidden = paper('GENERAL RULES\n1. Keepnets in matches only\u202e.\n');
    const { said } = await call(['rules', hidden, '--yes', '--json']);
    expect(said).not.toContain('\u202e');
  });

  it('asks about what tells of a person without showing it, and writes nothing until then', async () => {
    const before = bytesOf(folder);
    const { code, said } = await call(['rules', paper(CARD), '--yes']);
    expect(code).toBe(1);
    expect(said).toContain('From the Secretary, A·· Q····, on 0···· 9·· 5·· or a··@·····.······· before you fish.');
    expect([...said.matchAll(LEAVE_OUT)].map(([, key]) => key!.replace(/ \(.*/, ''))).toEqual([
      'name in line 16',
      'telephone in line 16',
      'mailbox in line 16',
    ]);
    expect(said).not.toMatch(/Quill|960 555/);
    expect(bytesOf(folder)).toEqual(before);
  });

  it('writes the rules with the numbers the club calls them by, and leaves out whoever is named', async () => {
    const { code, said } = await call(['rules', paper(CARD)], ['', '', '', '1', 'y']);
    expect([code, said]).toEqual([
      0,
      expect.stringContaining('card.txt, line 19: the number of a page: it is no rule'),
    ]);
    expect(rules()).toBe(
      [
        '## EXAMPLE ANGLING CLUB',
        '',
        '## GENERAL RULES',
        '',
        '- **1** All members must carry a current rod licence and show it to the bailiff.',
        '- **2** Keepnets:',
        '    - **a** in matches only;',
        '    - **b** not for carp over 5 lb \\<see the board\\>.',
        '- **3** No fishing within 20 yards of the overhead line.',
        '- **5** The following baits are banned:',
        '    - boilies',
        '    - floating bait',
        '',
        '## DAY TICKETS',
        '',
        'From the Secretary, (see the contacts) before you fish. Night fishing by permit of Mill Pond Fisheries.',
      ].join('\n'),
    );
    expect(said).toContain(
      'card.txt, line 10: warning: found 20 yards in a rule on overhead lines, and this guide keeps 30 m',
    );
    expect((await loadVenue(folder)).faults.filter(({ severity }) => severity === 'error')).toEqual([]);
    for (const [path, text] of Object.entries(bytesOf(home))) {
      if (path !== 'card.txt') expect([path, /quill|960 ?555/i.test(text)]).toEqual([path, false]);
    }
  });

  it('adds nothing the second time, and asks no more of a corrected card', async () => {
    await call(['rules', paper(CARD)], ['', '', '', '1', 'y']);
    const once = venueFile();
    const again = await call(['rules', paper(CARD), '--yes']);
    expect([again.code, again.said]).toEqual([0, expect.stringContaining('nothing was changed')]);
    expect(venueFile()).toBe(once);
    const right = await call(['rules', paper(CARD.replace('over 5 lb', 'over 6 lb'))], ['replace', 'y']);
    expect(right.said).toContain('- **b** not for carp over 6 lb');
    expect(venueFile()).toBe(once.replace('over 5 lb', 'over 6 lb'));
  });

  it('puts rules below those that stand there where the club says so, front matter and line ends kept', async () => {
    const written = `${venueFile().trimEnd()}\n\nOld rule.\n`.replaceAll('\n', '\r\n');
    writeFileSync(join(folder, 'venue.md'), written);
    const answers = paper('all: { standing rules: add }\n', 'answers.yaml');
    await call(['rules', paper('1. One.\n2. Two.\n'), '--answers', answers, '--yes']);
    expect(venueFile()).toBe(`${written.trimEnd()}\r\n\r\n1. One.\r\n2. Two.\r\n`);
    await call(['rules', paper('1. One.\n2. Two.\n'), '--answers', answers, '--yes']);
    expect(venueFile()).toBe(`${written.trimEnd()}\r\n\r\n1. One.\r\n2. Two.\r\n`);
  });

  it('puts rules in the place of those a folder begins with, unasked', async () => {
    const [front = ''] = venueFile().split('Barbless hooks.');
    writeFileSync(join(folder, 'venue.md'), `${front}${EXAMPLE_RULES}\n`);
    const { code } = await call(['rules', paper('1. One.\n2. Two.\n'), '--yes']);
    expect([code, venueFile()]).toEqual([0, `${front}1. One.\n2. Two.\n`]);
  });

  it('knows the anglers of the register, wherever they stand in a rule', async () => {
    paper('all: { listing: full, places: 1, hours: 5 }\n', 'venue.import.yaml');
    await call([
      'results',
      paper('Mill Pond 11 October 2026\nPeg,Name,Weight\n1,Bo Reedmace,12-04\n', 'oct.csv'),
      '--yes',
    ]);
    const { code, said } = await call([
      'rules',
      paper('1. The cup given by Bo Reedmace is fished for in May.\n2. Kiln Corner is closed.\n'),
    ]);
    expect(code).toBe(1);
    expect(said).toContain('2 questions need answers');
    expect(said).toContain('name in line 1');
    expect(said).not.toContain('Reedmace');
  });

  it.each([
    ['a word processor’s file', 'PK\u0003\u0004rest', 'found a file that is no plain text'],
    ['a file of pages', '%PDF-1.7', 'found a file that is no plain text'],
    ['more than rules can be', 'word '.repeat(11_000), 'found 55000 characters, expected at most 50000'],
  ])('refuses %s in words', async (_, text, sentence) => {
    const before = bytesOf(folder);
    const { code, said } = await call(['rules', paper(text), '--yes']);
    expect([code, said]).toEqual([1, expect.stringContaining(sentence)]);
    expect(bytesOf(folder)).toEqual(before);
  });
});
