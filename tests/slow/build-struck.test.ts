import { spawn } from 'node:child_process';
import { createHash } from 'node:crypto';
import {
  chmodSync,
  cpSync,
  existsSync,
  lchownSync,
  lstatSync,
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
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readOfflineList } from '../../src/client/offline/offline-list.ts';
import { HOST_FILES } from '../../src/commands/guide-folder/host-files.ts';
import { NOTICES_PATH } from '../../src/commands/third-party-notices.ts';
import { childEnvironment } from '../child-environment.ts';
import { venueOnDisk } from '../commands/intake/venue-on-disk.ts';
import { kindOf } from './kind-of-call.ts';

const SOURCE = fileURLToPath(new URL('../..', import.meta.url));
const NOBODY = 65534;
/** Files that a build changes after it wrote them, and the list itself, are held against nothing. */
const UNLISTED = new Set<string>(['offline-list.json', 'service-worker.js', NOTICES_PATH, ...HOST_FILES]);

let scratch: string;
/** A project of its own, so that whoever runs it may write into it. */
let project: string;
let venue: string;
let out: string;
let cache: string;
let old: string;
let oldEdition: string;
let newEdition: string;
let calls: readonly string[];

interface Ran {
  readonly status: number | null;
  readonly said: string;
}

function build(
  environment: Readonly<Record<string, string>> = {},
  options: { uid?: number; gid?: number; limit?: number } = {},
): Promise<Ran> {
  const { limit, ...user } = options;
  const args = [
    '--import',
    join(SOURCE, 'tests/slow/strike-disk.ts'),
    'src/commands/venue.ts',
    'build',
    '--venue',
    venue,
    '--out',
    out,
  ];
  // The shell's own limit on how large a file may become, in kilobytes: a real refusal of the system that needs no rights.
  const command: readonly [string, readonly string[]] =
    limit === undefined
      ? [process.execPath, args]
      : ['bash', ['-c', `ulimit -f ${limit}; exec "$0" "$@"`, process.execPath, ...args]];
  const child = spawn(...(command as [string, string[]]), {
    cwd: project,
    env: childEnvironment({
      PEG_ATLAS_CACHE: cache,
      STRIKE_BELOW: `${dirname(out)}:${cache}:${workshopOf(project)}`,
      HOME: scratch,
      ...environment,
    }),
    ...user,
  });
  let said = '';
  for (const stream of [child.stdout, child.stderr]) stream?.on('data', (chunk: Buffer) => (said += chunk));
  return new Promise((resolve) => child.once('close', (status) => resolve({ status, said })));
}

const workshopOf = (folder: string) => join(folder, 'node_modules/.cache/peg-atlas/workshops');

/** The edition of the guide that is served, each of its files as its own list says. */
async function served(): Promise<string> {
  const list = await readOfflineList(readFileSync(join(out, 'offline-list.json')));
  expect(list).not.toBeNull();
  const files = list!.files.map(([path, digest]) => {
    const file = decodeURIComponent(path === '' || path.endsWith('/') ? `${path}index.html` : path);
    const bytes = readFileSync(join(out, file));
    expect(createHash('sha256').update(bytes).digest('hex').slice(0, 16), file).toBe(digest);
    return file;
  });
  const there = readdirSync(out, { recursive: true, withFileTypes: true }).filter((entry) => entry.isFile());
  const counted = there.filter(
    ({ name, parentPath }) => !UNLISTED.has(name) && !/\/(?:changes|paper\/booklet)$/.test(parentPath),
  );
  expect(counted.length).toBe(files.length);
  return list!.edition;
}

/** All that stands beside the guide, and what is left where it was built. */
const beside = () => [
  ...readdirSync(dirname(out)),
  ...(existsSync(workshopOf(project)) ? readdirSync(workshopOf(project)) : []),
];
const leftInCache = () =>
  readdirSync(cache, { recursive: true, encoding: 'utf8' }).filter((name) => /unfinished|\.tmp|\.part/.test(name));

function resetOut(): void {
  rmSync(dirname(out), { recursive: true, force: true });
  mkdirSync(dirname(out));
  cpSync(old, out, { recursive: true });
  rmSync(cache, { recursive: true, force: true });
}

beforeAll(async () => {
  scratch = mkdtempSync(join(tmpdir(), 'build-struck-'));
  project = join(scratch, 'project');
  for (const name of ['src', 'public', 'package.json', 'tsconfig.json', 'astro.config.mjs'])
    cpSync(join(SOURCE, name), join(project, name), { recursive: true });
  mkdirSync(join(project, 'node_modules'));
  for (const name of readdirSync(join(SOURCE, 'node_modules')).filter((each) => !/^\.(?:cache|astro|vite)/.test(each)))
    symlinkSync(join(SOURCE, 'node_modules', name), join(project, 'node_modules', name));
  venue = venueOnDisk();
  out = join(scratch, 'site/dist');
  cache = join(scratch, 'cache');
  old = join(scratch, 'old');
  mkdirSync(dirname(out));
  expect(await build()).toMatchObject({ status: 0 });
  cpSync(out, old, { recursive: true });
  oldEdition = await served();
  const file = join(venue, 'venue.md');
  writeFileSync(file, readFileSync(file, 'utf8').replace('name: Example Fishery', 'name: Another Fishery'));
  resetOut();
  const log = join(scratch, 'calls');
  expect(await build({ STRIKE_LOG: log })).toMatchObject({ status: 0 });
  newEdition = await served();
  expect(newEdition).not.toBe(oldEdition);
  calls = readFileSync(log, 'utf8').trim().split('\n');
});

afterAll(() => {
  rmSync(scratch, { recursive: true, force: true });
  rmSync(dirname(venue), { recursive: true, force: true });
});

interface Strike {
  readonly kind: string;
  /** Which of its kind, from 1. */
  readonly at: number;
  /** Whether another run may make fewer calls of this kind. */
  readonly isLast: boolean;
}

/** The first and the last call of each kind: what lies between them differs by a file's name alone. */
function strikes(isFirstOnly = false): readonly Strike[] {
  const kinds = Map.groupBy(calls, kindOf);
  return [...kinds].flatMap(([kind, { length }]) => [
    { kind, at: 1, isLast: false },
    ...(isFirstOnly || length === 1 ? [] : [{ kind, at: length, isLast: true }]),
  ]);
}

const strikeAt = ({ kind, at }: Strike) => ({ STRIKE_KIND: kind, STRIKE_AT: String(at) });

/** Runs a build of a folder with a fault, which writes nothing: what it does first is to put in order what was left. */
async function tidied(): Promise<void> {
  const venueFile = join(venue, 'venue.md');
  const text = readFileSync(venueFile, 'utf8');
  writeFileSync(venueFile, text.replace('name: Another Fishery', 'nam: Another Fishery'));
  expect((await build()).status).toBe(1);
  writeFileSync(venueFile, text);
}

describe('a build killed before a call that changes the disk', () => {
  it('leaves the old guide or the new one whole, and the next command clears away the rest', async () => {
    const table: string[] = [];
    let late = 0;
    for (const strike of strikes()) {
      resetOut();
      const { status } = await build(strikeAt(strike));
      // A run may make fewer calls of a kind, never none: only a strike at the last of many may find the build at its end.
      if (status !== null) {
        expect(strike.isLast, strike.kind).toBe(true);
        expect(status).toBe(0);
        late++;
      }
      const gap = existsSync(out) ? '' : ', put back by the next command';
      await tidied();
      const edition = await served();
      expect([oldEdition, newEdition]).toContain(edition);
      expect(beside()).toEqual(['dist']);
      table.push(`${strike.at} | ${strike.kind} | wholly ${edition === oldEdition ? 'old' : 'new'}${gap}`);
    }
    console.info([`${calls.length} calls, ${table.length} kills`, ...table].join('\n'));
    expect(table.some((row) => row.includes('wholly new'))).toBe(true);
    expect(table.length).toBeGreaterThan(8);
    expect(late).toBeLessThanOrEqual(2);
  });
});

describe('a disk that refuses from a call on', () => {
  it.each(['ENOSPC', 'EROFS'])('leaves the old guide or the new one whole, and says so: %s', async (code) => {
    const table: string[] = [];
    for (const strike of strikes(true)) {
      resetOut();
      const { status, said } = await build({ ...strikeAt(strike), STRIKE_WITH: code });
      const isMissing = !existsSync(out);
      // Between the two moves: the message says where the new guide is, and the next command puts it there.
      if (isMissing) expect(said).toMatch(/nothing stands in .* now\. The new guide is whole in/);
      if (isMissing) await tidied();
      const edition = await served();
      expect(said).not.toMatch(/fault of the program|^\s+at .*:\d+:\d+/m);
      if (status === 0) expect(edition).toBe(newEdition);
      else {
        expect(status).toBe(1);
        expect([oldEdition, newEdition]).toContain(edition);
        if (!isMissing) expect(said).toMatch(code === 'ENOSPC' ? /The disk is full/ : /may only be read/);
      }
      // What could not be cleared away on a disk that refuses everything is cleared by the next build.
      if (code === 'ENOSPC') expect(beside()).toEqual(['dist']);
      table.push(`${strike.kind} | rc ${status}, wholly ${edition === oldEdition ? 'old' : 'new'}`);
    }
    console.info([code, ...table].join('\n'));
  });
});

it('two builds at once end with one whole guide and nothing beside it', async () => {
  resetOut();
  const both = await Promise.all([build(), build()]);
  expect(both.map(({ status }) => status)).toEqual([0, 0]);
  expect(await served()).toBe(newEdition);
  expect(beside()).toEqual(['dist']);
  expect(leftInCache()).toEqual([]);
});

it('a limit of the system on the size of files is told, and the guide is as it was', async () => {
  resetOut();
  const { status, said } = await build({}, { limit: 8 });
  expect(status).toBe(1);
  expect(said).toMatch(/larger than the system lets it become/);
  expect(await served()).toBe(oldEdition);
  expect(beside()).toEqual(['dist']);
});

/** Root may write anywhere: only root can become somebody else to try it. */
const canBecomeNobody = process.getuid?.() === 0 && isReadableByAll(SOURCE);

function isReadableByAll(folder: string): boolean {
  for (let at = folder; at !== dirname(at); at = dirname(at)) if ((statSync(at).mode & 0o5) !== 0o5) return false;
  return true;
}

/** Gives away what lies in a folder itself: a link is given away, never what it leads to. */
function giveToNobody(path: string): void {
  lchownSync(path, NOBODY, NOBODY);
  if (!lstatSync(path).isDirectory()) return;
  for (const name of readdirSync(path)) giveToNobody(join(path, name));
}

describe.skipIf(!canBecomeNobody)('as an ordinary user (skipped where this does not run as root)', () => {
  const asNobody = { uid: NOBODY, gid: NOBODY };
  beforeAll(() => {
    resetOut();
    chmodSync(scratch, 0o777);
    giveToNobody(scratch);
    chmodSync(dirname(venue), 0o755);
  });

  it('builds from a folder that may only be read, without a cache', async () => {
    mkdirSync(cache, { recursive: true });
    chmodSync(cache, 0o555);
    const { status, said } = await build({}, asNobody);
    expect(said).not.toContain('fault of the program');
    expect(status).toBe(0);
    expect(await served()).toBe(newEdition);
  });

  it('says that it may not write beside the guide, and leaves it', async () => {
    chmodSync(dirname(out), 0o555);
    const { status, said } = await build({}, asNobody);
    chmodSync(dirname(out), 0o755);
    expect(status).toBe(1);
    expect(said).toMatch(/does not give the right to write/);
    expect(await served()).toBe(newEdition);
    expect(beside()).toEqual(['dist']);
  });
});
