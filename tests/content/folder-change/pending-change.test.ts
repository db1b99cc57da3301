import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { contentHash, DamagedJournal } from '../../../src/content/folder-change/journal.ts';
import { settleFolder } from '../../../src/content/folder-change/settle-folder.ts';
import { loadVenue } from '../../../src/content/load-venue.ts';
import { FILE, smallVenue } from '../small-venue.ts';

let scratch: string;
let folder: string;

beforeEach(() => {
  scratch = mkdtempSync(join(tmpdir(), 'pending-'));
  folder = join(scratch, 'venue');
  for (const [path, text] of smallVenue().texts) put(path, text);
});

afterEach(() => rmSync(scratch, { recursive: true, force: true }));

function put(path: string, text: string): void {
  mkdirSync(dirname(join(folder, path)), { recursive: true });
  writeFileSync(join(folder, path), text);
}

const hash = (text: string): string => contentHash(new TextEncoder().encode(text));

/** A journal as an intake leaves it, or as somebody writes it who would like to be taken for one. */
function journal(entries: readonly object[], staged: Readonly<Record<string, string>> = {}): void {
  for (const [name, text] of Object.entries(staged)) put(`.intake/change-1/${name}`, text);
  put('.intake/change-1/committed.json', JSON.stringify(entries));
}

function entry(path: string, before: string | null, after: string, staged = '0.new'): object {
  return { path, staged, before: before === null ? null : hash(before), after: hash(after) };
}

/** Every name and byte below the scratch folder. */
function everything(at = scratch): Record<string, string> {
  return Object.fromEntries(
    readdirSync(at, { recursive: true, withFileTypes: true })
      .filter((found) => found.isFile())
      .map((found) => [join(found.parentPath, found.name), readFileSync(join(found.parentPath, found.name), 'utf8')]),
  );
}

it('is read as if it were finished, reported, and left as it is', async () => {
  const old = smallVenue().texts.get(FILE.peg) ?? '';
  const closed = old.replace('status: open', 'status: closed\nstatus-since: 2026-10-01\nstatus-reason: Soft');
  journal([entry(FILE.peg, old, closed)], { '0.new': closed });
  const before = everything();
  const { venue, faults } = await loadVenue(folder);
  expect(venue).toBeNull();
  expect(faults).toMatchObject([{ rule: 'intake-unfinished', mend: expect.stringContaining('venue -- intake') }]);
  expect(everything()).toEqual(before);
  settleFolder(folder);
  expect((await loadVenue(folder)).venue?.pegs.find(({ peg }) => peg === '1')?.status).toBe('closed');
});

const STRANGE: readonly (readonly [string, () => void])[] = [
  ['a path out of the folder', () => journal([entry('../pwned.txt', null, 'x')], { '0.new': 'x' })],
  ['a path two folders up', () => journal([entry('../../venue.md', null, 'x')], { '0.new': 'x' })],
  ['a path from the top of the disk', () => journal([entry(join(scratch, 'pwned.txt'), null, 'x')], { '0.new': 'x' })],
  ['a path with backslashes', () => journal([entry('..\\pwned.txt', null, 'x')], { '0.new': 'x' })],
  ['a hidden path', () => journal([entry('.git/hooks/pre-commit', null, 'x')], { '0.new': 'x' })],
  ['a path that steps up inside', () => journal([entry('pegs/../../pwned.txt', null, 'x')], { '0.new': 'x' })],
  ['a staged file elsewhere', () => journal([{ ...entry('notices/a.md', null, 'x'), staged: '../../venue.md' }])],
  ['content that was not meant', () => journal([entry('notices/a.md', null, 'x')], { '0.new': 'y' })],
  ['a list that is none', () => journal({} as never)],
  [
    'an entry without hashes',
    () => journal([{ path: 'notices/a.md', staged: '0.new', before: null }], { '0.new': 'x' }),
  ],
  [
    'a file named twice',
    () => journal([entry('a.md', null, 'x'), entry('a.md', null, 'x', '1.new')], { '0.new': 'x', '1.new': 'x' }),
  ],
  ['a list cut short', () => put('.intake/change-1/committed.json', '[{"path":"a')],
  ['null', () => put('.intake/change-1/committed.json', 'null')],
  [
    'a way through a link',
    () => {
      symlinkSync(scratch, join(folder, 'away'));
      journal([entry('away/pwned.txt', null, 'x')], { '0.new': 'x' });
    },
  ],
  [
    'a journal behind a link',
    () => {
      journal([entry('notices/a.md', null, 'x')], { '0.new': 'x' });
      symlinkSync(join(folder, '.intake/change-1'), join(folder, '.intake/change-2'));
    },
  ],
];

it.each(STRANGE)('with %s is named with its mend, by readers and writers, and writes nothing', async (_, make) => {
  make();
  const before = everything();
  const { venue, faults } = await loadVenue(folder);
  expect(venue).toBeNull();
  expect(faults.map(({ rule }) => rule)).toEqual(['intake-damaged']);
  expect(faults[0]?.mend).toContain(`Delete the folder ${join(folder, '.intake')}`);
  expect(everything()).toEqual(before);
  expect(() => settleFolder(folder)).toThrow(DamagedJournal);
  // A change that is sound may be finished on the way to one that is not; nothing is written anywhere else.
  expect(Object.keys(everything()).filter((path) => !path.startsWith(folder))).toEqual([]);
  expect(readFileSync(join(folder, FILE.venue), 'utf8')).toBe(smallVenue().texts.get(FILE.venue));
});
