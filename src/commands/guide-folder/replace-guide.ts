import { basename, dirname, join } from 'node:path';
import { type GuideDisk, REAL_GUIDE_DISK } from './guide-disk.ts';
import { isRunning } from './is-running.ts';

/** How far a guide beside the folder of the guide has come. */
type State = 'unfinished' | 'whole' | 'old';

/** Where a build of this process writes its guide: beside the folder it is for, under a hidden name. */
export function unfinishedGuide(folder: string): string {
  return besides(folder, 'unfinished', process.pid);
}

/**
 * Puts the finished guide of this process where `folder` is. No system call that Node knows exchanges two folders, so there
 * is a moment between two moves when none stands there; a process killed then leaves the whole new guide beside it, and
 * `recoverGuide` puts it in place. What is served is the old guide or the new, never a part of one.
 */
export function replaceGuide(folder: string, disk: GuideDisk = REAL_GUIDE_DISK): void {
  const whole = besides(folder, 'whole', process.pid);
  const old = besides(folder, 'old', process.pid);
  disk.rename(unfinishedGuide(folder), whole);
  for (let attempt = 1; ; attempt++) {
    if (disk.exists(folder)) disk.rename(folder, old);
    try {
      disk.rename(whole, folder);
      break;
    } catch (error) {
      // Another build came in between: its guide makes room for this one, which is as whole.
      if (attempt === 3 || !disk.exists(folder)) {
        bringBack(old, folder, whole, disk);
        throw error;
      }
      disk.remove(old);
    }
  }
  disk.remove(old);
}

/** The disk refused the second of two moves, and refuses to take the first one back: the new guide is whole, and beside its place. */
export class GuideBesideItsPlace extends Error {
  constructor(folder: string, whole: string) {
    super(
      `The disk refused while the new guide was put in place: nothing stands in ${folder} now. The new guide is whole in ${whole}: run the build again, which puts it there, or rename that folder yourself.`,
    );
  }
}

function bringBack(old: string, folder: string, whole: string, disk: GuideDisk): void {
  if (disk.exists(folder) || !disk.exists(old)) return;
  try {
    disk.rename(old, folder);
  } catch {
    throw new GuideBesideItsPlace(folder, whole);
  }
}

/**
 * Brings back what a build left that was killed: where no guide stands in `folder`, the whole new one, else the old one; and
 * clears away the rest. Guides of builds that are at work are left alone.
 * @returns whether a guide was brought back
 */
export function recoverGuide(
  folder: string,
  disk: GuideDisk = REAL_GUIDE_DISK,
  isAtWork: (process: number) => boolean = isRunning,
): boolean {
  const left = leftBeside(folder, disk).filter(({ owner }) => !isAtWork(owner));
  const best = left.find(({ state }) => state === 'whole') ?? left.find(({ state }) => state === 'old');
  const isMissing = best !== undefined && !disk.exists(folder);
  if (isMissing) disk.rename(best.path, folder);
  for (const { path } of left) if (disk.exists(path)) disk.remove(path);
  return isMissing;
}

interface Left {
  readonly path: string;
  readonly state: State;
  readonly owner: number;
}

function leftBeside(folder: string, disk: GuideDisk): readonly Left[] {
  const parent = dirname(folder);
  return disk.list(parent).flatMap((name) => {
    const [, of, state, owner] = /^\.(.+)-(unfinished|whole|old)-(\d+)$/.exec(name) ?? [];
    if (of !== basename(folder) || owner === undefined) return [];
    return [{ path: join(parent, name), state: state as State, owner: Number(owner) }];
  });
}

function besides(folder: string, state: State, owner: number): string {
  return join(dirname(folder), `.${basename(folder)}-${state}-${owner}`);
}
