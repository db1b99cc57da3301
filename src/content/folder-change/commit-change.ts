import { randomUUID } from 'node:crypto';
import { dirname, join } from 'node:path';
import { ChangeRefused } from './change-refused.ts';
import { type Disk, REAL_DISK } from './disk.ts';
import { CHANGE, COMMITTED, committedChanges, contentHash, fileHash, JOURNAL, type JournalEntry } from './journal.ts';
import { LOCK, lockJournal } from './lock-journal.ts';
import { whyUnsafe } from './safe-path.ts';
import { finishChange, settleFolder } from './settle-folder.ts';

/** New content of one file of the folder, or its end. */
export interface NewFile {
  /** Path inside the folder, with forward slashes. */
  readonly path: string;
  /** Null where the file is to be taken away. */
  readonly bytes: Uint8Array | null;
  /** What was read before the change was worked out; null where there was no file. */
  readonly before: Uint8Array | null;
}

/**
 * Writes several files of a folder, all or none, also when the process is killed or the power goes at any moment.
 *
 * The new files are written aside first. One move of a small list then decides: before it nothing has happened, after it
 * the change counts as made, and the moves that follow are finished by the next intake (`settleFolder`).
 * The last file of the list is moved last.
 * @throws ChangeRefused where another intake is running, a file is no longer what was read or its folder may not be written
 * to, and nothing was changed; UnfinishedChange where the disk refused after the change was decided
 */
export function commitChange(folder: string, files: readonly NewFile[], disk: Disk = REAL_DISK): void {
  settleFolder(folder, disk);
  const unlock = lockJournal(folder, disk);
  const change = join(folder, JOURNAL, CHANGE + randomUUID());
  let isDecided = false;
  try {
    clearAway(folder, disk);
    refuseWhatCannotBeWritten(folder, files, disk);
    const entries = stage(folder, change, files, disk);
    refuseWhatChanged(folder, entries, disk);
    disk.writeNew(join(change, 'deciding.json'), new TextEncoder().encode(JSON.stringify(entries)));
    disk.rename(join(change, 'deciding.json'), join(change, COMMITTED));
    isDecided = true;
    disk.syncFolder(change);
    finishChange(folder, change, disk);
  } finally {
    if (!isDecided) disk.remove(change);
    unlock();
  }
}

/**
 * Finishes a change that was stopped after it was decided, and clears away what one left that was stopped before or after.
 * @returns whether there was a change to finish
 * @throws ChangeRefused where another intake is at work; UnfinishedChange as `settleFolder` does
 */
export function tidyFolder(folder: string, disk: Disk = REAL_DISK): boolean {
  const isFinished = settleFolder(folder, disk);
  if (disk.exists(join(folder, JOURNAL))) {
    const unlock = lockJournal(folder, disk);
    clearAway(folder, disk);
    unlock();
  }
  return isFinished;
}

/** Clears away what an intake left that was stopped before it was decided. The lock is ours, so none is at work. */
function clearAway(folder: string, disk: Disk): void {
  const committed = committedChanges(disk, folder);
  for (const name of disk.list(join(folder, JOURNAL))) {
    const path = join(folder, JOURNAL, name);
    if (name !== LOCK && !committed.includes(path)) disk.remove(path);
  }
}

function stage(folder: string, change: string, files: readonly NewFile[], disk: Disk): JournalEntry[] {
  disk.makeFolder(change);
  const entries = files.map(({ path, bytes, before }, index): JournalEntry => {
    refuseOutside(folder, path, disk);
    const staged = `${index}.new`;
    disk.writeNew(join(change, staged), bytes ?? NOTHING);
    if (bytes !== null && before !== null && disk.exists(join(folder, path)))
      disk.copyMode(join(folder, path), join(change, staged));
    return { path, staged, before: hashOf(before), after: hashOf(bytes) };
  });
  disk.syncFolder(change);
  disk.syncFolder(dirname(change));
  return entries;
}

/** Where a file is to be taken away, an empty one waits in the journal as a sign that it still stands. */
const NOTHING = new Uint8Array();

function hashOf(bytes: Uint8Array | null): string | null {
  return bytes === null ? null : contentHash(bytes);
}

function refuseOutside(folder: string, path: string, disk: Disk): void {
  const why = whyUnsafe(folder, path, disk);
  if (why !== null) throw new ChangeRefused(why);
}

/** Asked before anything is decided: of five files two in place and three refused would be neither old nor new. */
function refuseWhatCannotBeWritten(folder: string, files: readonly NewFile[], disk: Disk): void {
  const places = new Set(files.map(({ path }) => dirname(path)));
  const refused = [...places].filter((place) => !disk.mayWriteIn(join(folder, place)));
  if (refused.length === 0) return;
  const where = refused.map((place) => (place === '.' ? 'The venue folder' : `${place}/`)).join(', ');
  throw new ChangeRefused(
    `${where} may not be written to. Nothing was changed; give the right to write there and run it again.`,
  );
}

function refuseWhatChanged(folder: string, entries: readonly JournalEntry[], disk: Disk): void {
  const changed = entries.filter(({ path, before }) => fileHash(disk, join(folder, path)) !== before);
  if (changed.length === 0) return;
  const paths = changed.map(({ path }) => path).join(', ');
  throw new ChangeRefused(`While this was being worked out, ${paths} was edited. Nothing was changed; run it again.`);
}
