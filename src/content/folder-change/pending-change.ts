import { join } from 'node:path';
import { typed } from '../typed-command.ts';
import { type Disk, REAL_DISK } from './disk.ts';
import { committedChanges, DamagedJournal, readJournal } from './journal.ts';
import { editedSince, waitingFiles } from './settle-folder.ts';

/** A change that counts as made and waits to be finished, as a reader meets it. */
export interface PendingChange {
  /** What a person has to know and do. */
  readonly message: string;
  /** Whether the change is an intake's own; of another nothing is read. */
  readonly isSound: boolean;
  /** New content of the files that are still waiting, by path, null where one is to be taken away: with it the folder reads as it wholly is. */
  readonly files: ReadonlyMap<string, Uint8Array | null>;
}

const FINISH = `An intake was stopped in the middle, and what it had decided waits in the folder. It is read here as if it were finished. Finish it: ${typed('intake')}`;

/** The change that waits in a folder, or null. Writes nothing. */
export function pendingChange(folder: string, disk: Disk = REAL_DISK): PendingChange | null {
  const files = new Map<string, Uint8Array | null>();
  const changes = committedChanges(disk, folder);
  try {
    for (const change of changes) {
      const entries = readJournal(folder, change, disk) ?? [];
      const edited = editedSince(folder, change, entries, disk);
      if (edited.length > 0) {
        const message = `An intake was stopped in the middle, and since then ${edited.join(', ')} was edited. Put your edit aside, bring the file back to what it was (or delete the folder ${change} to give the intake up), and run: ${typed('intake')}`;
        return { message, isSound: true, files: new Map() };
      }
      for (const { path, staged, after } of waitingFiles(change, entries, disk))
        files.set(path, after === null ? null : disk.read(join(change, staged)));
    }
  } catch (error) {
    if (error instanceof DamagedJournal) return { message: error.message, isSound: false, files: new Map() };
    // Finished by another process while it was looked at.
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return null;
    throw error;
  }
  return changes.length === 0 ? null : { message: FINISH, isSound: true, files };
}
