import { dirname, join } from 'node:path';
import { typed } from '../typed-command.ts';
import { type Disk, REAL_DISK } from './disk.ts';
import { committedChanges, fileHash, type JournalEntry, readJournal } from './journal.ts';

/** A change that counts as made and is not finished: it needs a person first. The message says what is so and what to do. */
export class UnfinishedChange extends Error {}

/**
 * Finishes a change that was stopped after it was decided. Only a command that writes to the folder does so: whoever merely
 * reads a folder, which may come from anywhere, changes nothing in it. One that was stopped earlier has changed nothing.
 * @returns whether there was something to finish
 * @throws UnfinishedChange where a file to be replaced was edited in between (overwriting it would lose that edit) or the
 * disk refuses; DamagedJournal where the change is none of an intake
 */
export function settleFolder(folder: string, disk: Disk = REAL_DISK): boolean {
  const changes = committedChanges(disk, folder);
  for (const change of changes) finishChange(folder, change, disk);
  return changes.length > 0;
}

/** Moves what is still waiting to its place. Two processes may do this at once: each move happens once. */
export function finishChange(folder: string, change: string, disk: Disk): void {
  const entries = readJournal(folder, change, disk);
  if (entries === null) return;
  const edited = editedSince(folder, change, entries, disk);
  if (edited.length > 0) {
    throw new UnfinishedChange(
      `An intake was stopped in the middle, and since then ${edited.join(', ')} was edited. Put your edit aside, bring the file back to what it was (or delete the folder ${change} to give the intake up), and run this again.`,
    );
  }
  const waiting = waitingFiles(change, entries, disk);
  try {
    for (const { path, staged, after } of waiting) {
      if (after === null) takeAway(join(change, staged), join(folder, path), disk);
      else moveOnce(join(change, staged), join(folder, path), disk);
    }
    for (const parent of new Set(entries.map(({ path }) => dirname(join(folder, path))))) disk.syncFolder(parent);
    disk.remove(change);
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    if (code === undefined) throw error;
    const left = waitingFiles(change, entries, disk).map(({ path }) => path);
    const done = entries.length - left.length;
    throw new UnfinishedChange(
      `The intake is decided and not finished: ${done} of its ${entries.length} files are in place, and the system does not let ${left[0] ?? change} be written (${code}). Give the right to write there, or make room on the disk, and run: ${typed('intake')}. It finishes what is left; until then nothing is published.`,
    );
  }
}

/** Files that are not moved to their place yet. */
export function waitingFiles(change: string, entries: readonly JournalEntry[], disk: Disk): readonly JournalEntry[] {
  return entries.filter(({ staged }) => disk.exists(join(change, staged)));
}

/** Paths of waiting files whose place holds neither what the change found there nor what it means to put there. */
export function editedSince(
  folder: string,
  change: string,
  entries: readonly JournalEntry[],
  disk: Disk,
): readonly string[] {
  const edited = waitingFiles(change, entries, disk).filter(({ path, before, after }) => {
    const now = fileHash(disk, join(folder, path));
    return now !== before && now !== after;
  });
  return edited.map(({ path }) => path);
}

/** Its sign in the journal goes last: stopped in between, the next run finds nothing left to take away and only clears it. */
function takeAway(sign: string, path: string, disk: Disk): void {
  disk.remove(path);
  disk.remove(sign);
}

function moveOnce(from: string, to: string, disk: Disk): void {
  try {
    disk.makeFolder(dirname(to));
    disk.rename(from, to);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'ENOENT' || disk.exists(from)) throw error;
  }
}
