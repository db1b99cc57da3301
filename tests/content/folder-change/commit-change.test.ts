import {
  chmodSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, dirname, join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { ChangeRefused } from '../../../src/content/folder-change/change-refused.ts';
import { commitChange, type NewFile, tidyFolder } from '../../../src/content/folder-change/commit-change.ts';
import { type Disk, REAL_DISK } from '../../../src/content/folder-change/disk.ts';
import { readSettled } from '../../../src/content/folder-change/read-settled.ts';
import { settleFolder, UnfinishedChange } from '../../../src/content/folder-change/settle-folder.ts';
import { Killed, stoppingDisk } from './stopping-disk.ts';

const OLD = { 'venue.md': 'day 1', 'pegs/pool/1.md': 'open', 'pegs/pool/2.md': 'open', 'pegs/pool/3.md': 'open' };
/** Files changed, files added, and peg 3 taken away. */
const NEW = {
  'venue.md': 'day 1',
  'pegs/pool/1.md': 'closed',
  'pegs/pool/2.md': 'closed too',
  'gauge/pool.csv': 'date,level\n',
  'rounds/2026-11-12-k7q2.csv': 'entry\n',
};

let folder: string;

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'folder-change-'));
  write(OLD);
});

afterEach(() => rmSync(folder, { recursive: true, force: true }));

function write(files: Readonly<Record<string, string>>): void {
  for (const [path, text] of Object.entries(files)) {
    mkdirSync(dirname(join(folder, path)), { recursive: true });
    writeFileSync(join(folder, path), text);
  }
}

/** Every file that readers look at: names that begin with a dot are not read. */
function snapshot(at = folder, prefix = ''): Record<string, string> {
  const files: Record<string, string> = {};
  for (const name of readdirSync(at).filter((entry) => !entry.startsWith('.'))) {
    const path = join(at, name);
    if (statSync(path).isDirectory()) Object.assign(files, snapshot(path, `${prefix}${name}/`));
    else files[prefix + name] = readFileSync(path, 'utf8');
  }
  return files;
}

const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);

function change(): NewFile[] {
  const before = OLD as Readonly<Record<string, string>>;
  const written = Object.entries(NEW)
    .filter(([path, text]) => before[path] !== text)
    .map(([path, text]) => ({
      path,
      bytes: bytes(text),
      before: before[path] === undefined ? null : bytes(before[path]),
    }));
  const takenAway = Object.keys(OLD).filter((path) => !Object.hasOwn(NEW, path));
  return [...takenAway.map((path) => ({ path, bytes: null, before: bytes(before[path]!) })), ...written];
}

function steps(): number {
  const counted = stoppingDisk(Number.POSITIVE_INFINITY);
  commitChange(folder, change(), counted.disk);
  return counted.steps();
}

describe('a change of several files', () => {
  it('puts every file in place and leaves nothing else behind', () => {
    commitChange(folder, change());
    expect(snapshot()).toEqual(NEW);
    expect(readdirSync(folder)).not.toContain('.intake');
  });

  it('keeps the permissions of a file it replaces', () => {
    chmodSync(join(folder, 'pegs/pool/1.md'), 0o640);
    commitChange(folder, change());
    expect(statSync(join(folder, 'pegs/pool/1.md')).mode & 0o777).toBe(0o640);
  });

  it('is wholly old or wholly new for the next reader, at whichever step it is killed', () => {
    const all = steps();
    expect(all).toBeGreaterThan(12);
    const outcomes: string[] = [];
    for (let stopAt = 1; stopAt <= all; stopAt++) {
      rmSync(folder, { recursive: true });
      write(OLD);
      expect(() => commitChange(folder, change(), stoppingDisk(stopAt).disk)).toThrow(Killed);
      settleFolder(folder);
      const isNew = snapshot()['pegs/pool/1.md'] === 'closed';
      expect(snapshot(), `killed at step ${stopAt}`).toEqual(isNew ? NEW : OLD);
      outcomes.push(isNew ? 'new' : 'old');
      if (isNew) continue;
      // What was left behind must not stand in the way of the next try.
      REAL_DISK.remove(join(folder, '.intake/lock.json'));
      commitChange(folder, change());
      expect(snapshot()).toEqual(NEW);
      expect(readdirSync(folder)).not.toContain('.intake');
    }
    expect(outcomes).toEqual(outcomes.toSorted((a, b) => (a === b ? 0 : a === 'old' ? -1 : 1)));
    expect(new Set(outcomes)).toEqual(new Set(['old', 'new']));
  });

  it('is finished by a later reader where the one who finishes it is killed too', () => {
    const all = steps();
    for (let stopAt = 1; stopAt <= all; stopAt++) {
      for (let again = 1; again <= 8; again++) {
        rmSync(folder, { recursive: true });
        write(OLD);
        expect(() => commitChange(folder, change(), stoppingDisk(stopAt).disk)).toThrow(Killed);
        try {
          settleFolder(folder, stoppingDisk(again).disk);
        } catch (error) {
          expect(error).toBeInstanceOf(Killed);
        }
        settleFolder(folder);
        expect([OLD, NEW]).toContainEqual(snapshot());
      }
    }
  });

  it('leaves nothing lying about after the next intake has looked, at whichever step it was killed', () => {
    const all = steps();
    for (let stopAt = 1; stopAt <= all; stopAt++) {
      rmSync(folder, { recursive: true });
      write(OLD);
      expect(() => commitChange(folder, change(), stoppingDisk(stopAt).disk)).toThrow(Killed);
      // The lock names this very process, which lives on; the one that was killed does not.
      if (REAL_DISK.exists(join(folder, '.intake/lock.json'))) write({ '.intake/lock.json': '{"process":4194305}' });
      tidyFolder(folder);
      expect(readdirSync(folder), `killed at step ${stopAt}`).not.toContain('.intake');
      expect([OLD, NEW]).toContainEqual(snapshot());
    }
  });

  it('is given up where a file was edited while it was worked out', () => {
    write({ 'pegs/pool/2.md': 'edited' });
    expect(() => commitChange(folder, change())).toThrow('pegs/pool/2.md was edited. Nothing was changed');
    expect(snapshot()).toEqual({ ...OLD, 'pegs/pool/2.md': 'edited' });
    expect(readdirSync(folder)).not.toContain('.intake');
  });

  it('does not write over an edit made between the kill and the next reading', () => {
    const all = steps();
    for (let stopAt = all; stopAt >= 1; stopAt--) {
      rmSync(folder, { recursive: true });
      write(OLD);
      expect(() => commitChange(folder, change(), stoppingDisk(stopAt).disk)).toThrow(Killed);
      if (snapshot()['pegs/pool/1.md'] === 'closed' && snapshot()['pegs/pool/2.md'] === 'open') break;
    }
    write({ 'pegs/pool/2.md': 'edited' });
    expect(() => settleFolder(folder)).toThrow(UnfinishedChange);
    expect(() => settleFolder(folder)).toThrow('pegs/pool/2.md was edited');
    expect(snapshot()['pegs/pool/2.md']).toBe('edited');
  });

  it('waits for no other: it is refused while one is at work, and takes over from one that is gone', () => {
    write({ '.intake/lock.json': JSON.stringify({ process: process.pid }) });
    expect(() => commitChange(folder, change())).toThrow(ChangeRefused);
    expect(snapshot()).toEqual(OLD);
    for (const left of [JSON.stringify({ process: 2 ** 22 + 1 }), '{"proc', '']) {
      write({ '.intake/lock.json': left, '.intake/change-left/0.new': 'clo' });
      const files = change().map((file) => ({
        ...file,
        before: REAL_DISK.exists(join(folder, file.path)) ? REAL_DISK.read(join(folder, file.path)) : null,
      }));
      commitChange(folder, files);
      expect(readdirSync(folder)).not.toContain('.intake');
    }
  });

  it('refuses a path out of the folder and a file that is a link', () => {
    const before = null;
    expect(() => commitChange(folder, [{ path: '../x', bytes: bytes('x'), before }])).toThrow('does not lie inside');
    expect(() => commitChange(folder, [{ path: '/etc/x', bytes: bytes('x'), before }])).toThrow('does not lie inside');
    symlinkSync(join(folder, 'venue.md'), join(folder, 'linked.md'));
    expect(() => commitChange(folder, [{ path: 'linked.md', bytes: bytes('x'), before }])).toThrow('is a link');
    expect(readFileSync(join(folder, 'venue.md'), 'utf8')).toBe('day 1');
    mkdirSync(join(folder, '..', `${basename(folder)}-elsewhere`));
    symlinkSync(join(folder, '..', `${basename(folder)}-elsewhere`), join(folder, 'photos'));
    expect(() => commitChange(folder, [{ path: 'photos/a.jpg', bytes: bytes('x'), before }])).toThrow(
      'photos is a link',
    );
    expect(readdirSync(join(folder, 'photos'))).toEqual([]);
    rmSync(join(folder, '..', `${basename(folder)}-elsewhere`), { recursive: true });
  });

  it('changes nothing where one of its folders may not be written to', () => {
    const disk: Disk = { ...REAL_DISK, mayWriteIn: (place) => !place.endsWith('rounds') };
    expect(() => commitChange(folder, change(), disk)).toThrow('rounds/ may not be written to. Nothing was changed');
    expect(snapshot()).toEqual(OLD);
    expect(readdirSync(folder)).not.toContain('.intake');
  });

  it('says what is so where the disk refuses in the middle, and is finished once it lets', () => {
    const refusing: Disk = {
      ...REAL_DISK,
      rename: (from, to) => {
        if (to.includes('rounds')) throw Object.assign(new Error('refused'), { code: 'EACCES' });
        REAL_DISK.rename(from, to);
      },
    };
    expect(() => commitChange(folder, change(), refusing)).toThrow(
      /4 of its 5 files are in place.*2026-11-12-k7q2\.csv.*EACCES/,
    );
    expect(tidyFolder(folder)).toBe(true);
    expect(snapshot()).toEqual(NEW);
    expect(readdirSync(folder)).not.toContain('.intake');
  });
});

it('lets a reader that an intake overtakes read once more', async () => {
  let reads = 0;
  const seen = await readSettled(folder, async () => {
    const half = snapshot();
    reads++;
    if (reads === 1) commitChange(folder, change());
    return half;
  });
  expect(reads).toBe(2);
  expect(seen).toEqual(NEW);
});
