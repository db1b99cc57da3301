import { dirname, join } from 'node:path';
import { type Disk, REAL_DISK } from './disk.ts';
import { COMMITTED, committedChanges, fileHash, type JournalEntry } from './journal.ts';

/** An intake was stopped in the middle, and a file was edited before it could be finished. */
export class UnfinishedChange extends Error {}

/**
 * Finishes a change that was stopped after it was decided, so that whoever reads the folder sees it whole. Run before
 * anything reads the folder. One that was stopped earlier has changed nothing and is passed over.
 * @returns whether there was something to finish
 * @throws UnfinishedChange where a file to be replaced was edited in between: overwriting it would lose that edit
 */
export function settleFolder(folder: string, disk: Disk = REAL_DISK): boolean {
  const changes = committedChanges(disk, folder);
  for (const change of changes) finishChange(folder, change, disk);
  return changes.length > 0;
}

/** Moves what is still waiting to its place. Two processes may do this at once: each move happens once. */
export function finishChange(folder: string, change: string, disk: Disk): void {
  const entries = readEntries(change, disk);
  if (entries === null) return;
  const waiting = entries.filter(({ staged }) => disk.exists(join(change, staged)));
  const edited = waiting.filter(({ path, before, after }) => {
    const now = fileHash(disk, join(folder, path));
    return now !== before && now !== after;
  });
  if (edited.length > 0) {
    const paths = edited.map(({ path }) => path).join(', ');
    throw new UnfinishedChange(
      `An intake was stopped in the middle, and since then ${paths} was edited. Put your edit aside, bring the file back to what it was (or delete the folder ${change} to give the intake up), and run this again.`,
    );
  }
  for (const { path, staged } of waiting) moveOnce(join(change, staged), join(folder, path), disk);
  for (const parent of new Set(entries.map(({ path }) => dirname(join(folder, path))))) disk.syncFolder(parent);
  disk.remove(change);
}

function readEntries(change: string, disk: Disk): readonly JournalEntry[] | null {
  try {
    return JSON.parse(new TextDecoder().decode(disk.read(join(change, COMMITTED)))) as JournalEntry[];
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return null;
    throw error;
  }
}

function moveOnce(from: string, to: string, disk: Disk): void {
  try {
    disk.makeFolder(dirname(to));
    disk.rename(from, to);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'ENOENT' || disk.exists(from)) throw error;
  }
}
