import { spawn } from 'node:child_process';
import { cpSync, existsSync, readdirSync, rmSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';
import { uniformInt } from 'pure-rand/distribution/uniformInt';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { settleFolder } from '../../src/content/folder-change/settle-folder.ts';
import { loadVenue } from '../../src/content/load-venue.ts';
import { bytesOf, fullRound, roundFile, venueOnDisk } from '../commands/intake/venue-on-disk.ts';

const PROJECT = fileURLToPath(new URL('../..', import.meta.url));
const RUNS_AT_ANY_TIME = 25;
const RUNS_WHILE_WRITING = 80;

let folder: string;
let pristine: string;
let file: string;
let old: Record<string, string>;
let wholeNew: Record<string, string>;
let usualMilliseconds: number;

/** Starts the real command in a process of its own. */
function start() {
  const child = spawn(process.execPath, ['src/commands/venue.ts', 'intake', file, '--yes', '--venue', folder], {
    cwd: PROJECT,
    stdio: 'ignore',
  });
  const ended = new Promise<void>((resolve) => child.once('exit', () => resolve()));
  return { child, ended };
}

function reset(): void {
  rmSync(folder, { recursive: true, force: true });
  cpSync(pristine, folder, { recursive: true });
}

/** What readers see: they pass over names that begin with a dot. */
function visible(): Record<string, string> {
  return Object.fromEntries(Object.entries(bytesOf(folder)).filter(([path]) => !path.startsWith('.')));
}

/** Looks at the folder as the next command finds it. */
function outcome(): 'old' | 'new' {
  settleFolder(folder);
  const files = visible();
  const isOld = JSON.stringify(files) === JSON.stringify(old);
  if (!isOld) expect(files).toEqual(wholeNew);
  return isOld ? 'old' : 'new';
}

beforeAll(async () => {
  folder = venueOnDisk();
  pristine = join(dirname(folder), 'pristine');
  cpSync(folder, pristine, { recursive: true });
  file = roundFile(folder, await fullRound(folder));
  old = visible();
  const began = performance.now();
  await start().ended;
  usualMilliseconds = performance.now() - began;
  wholeNew = visible();
  expect(Object.keys(wholeNew).length).toBeGreaterThan(Object.keys(old).length);
});

afterAll(() => rmSync(dirname(folder), { recursive: true, force: true }));

it('finds the folder wholly old or wholly new, whenever the process is killed', async () => {
  const random = xoroshiro128plus(11);
  const seen = { old: 0, new: 0 };
  for (let run = 0; run < RUNS_AT_ANY_TIME; run++) {
    reset();
    const { child, ended } = start();
    await wait(uniformInt(random, 0, Math.ceil(usualMilliseconds * 1.05)));
    child.kill('SIGKILL');
    await ended;
    seen[outcome()]++;
  }
  expect(seen.old).toBeGreaterThan(0);
  console.info(`killed at any time: ${seen.old} times wholly old, ${seen.new} times wholly new`);
});

/** Moments of an intake as they can be seen from outside, each a place to strike. */
const MOMENTS: readonly ((journal: string) => boolean)[] = [
  (journal) => existsSync(journal),
  (journal) => stagedIn(journal).includes('0.new'),
  (journal) => stagedIn(journal).includes('5.new'),
  (journal) => stagedIn(journal).includes('committed.json'),
  () => existsSync(join(folder, 'photos')),
  () => readdirSync(join(folder, 'rounds')).length > 1,
];

function stagedIn(journal: string): string[] {
  try {
    return readdirSync(journal, { recursive: true, encoding: 'utf8' }).map((name) => basename(name));
  } catch {
    return [];
  }
}

it('finds it so too where the kill falls among the writes, and the next intake works', async () => {
  const random = xoroshiro128plus(12);
  const seen = { old: 0, new: 0, finishedByReader: 0 };
  for (let run = 0; run < RUNS_WHILE_WRITING; run++) {
    reset();
    const { child, ended } = start();
    const journal = join(folder, '.intake');
    const isReached = MOMENTS[run % MOMENTS.length]!;
    const isLate = () => readdirSync(join(folder, 'rounds')).length > 1;
    const giveUpAt = performance.now() + 60_000;
    // Looked at without a pause: all the writes take a few milliseconds.
    while (!isReached(journal) && !isLate() && performance.now() < giveUpAt);
    const until = performance.now() + uniformInt(random, 0, 2000) / 1000;
    while (performance.now() < until);
    child.kill('SIGKILL');
    await ended;
    if (stagedIn(journal).includes('committed.json')) seen.finishedByReader++;
    seen[outcome()]++;
    if (run % 10 === 0) {
      await start().ended;
      expect(bytesOf(folder)).toEqual(wholeNew);
      expect((await loadVenue(folder)).faults).toEqual([]);
    }
  }
  expect(Math.min(seen.old, seen.new)).toBeGreaterThan(0);
  console.info(
    `killed among the writes: ${seen.old} times wholly old, ${seen.new} times wholly new, ${seen.finishedByReader} of them finished by the reader`,
  );
});
