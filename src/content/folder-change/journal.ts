import { createHash } from 'node:crypto';
import { join } from 'node:path';
import type { Disk } from './disk.ts';

/** Where a change waits inside the venue folder. Readers of the folder pass over names that begin with a dot. */
export const JOURNAL = '.intake';

/** How the folder of one change inside the journal begins. */
export const CHANGE = 'change-';

/** Written last and in one move: from then on the change counts as made. */
export const COMMITTED = 'committed.json';

/** One file of a change. */
export interface JournalEntry {
  /** Path inside the folder, with forward slashes. */
  readonly path: string;
  /** Name of the new content inside the journal's folder. */
  readonly staged: string;
  /** SHA-256 of what is to be replaced; null where there was no file. */
  readonly before: string | null;
  readonly after: string;
}

/** SHA-256 of some bytes. */
export function contentHash(bytes: Uint8Array): string {
  return createHash('sha256').update(bytes).digest('hex');
}

/** SHA-256 of a file, null where there is none. */
export function fileHash(disk: Disk, path: string): string | null {
  try {
    return contentHash(disk.read(path));
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return null;
    throw error;
  }
}

/** Folders of the journal that hold a change which counts as made. */
export function committedChanges(disk: Disk, folder: string): string[] {
  const journal = join(folder, JOURNAL);
  return disk
    .list(journal)
    .filter((name) => name.startsWith(CHANGE))
    .map((name) => join(journal, name))
    .filter((change) => disk.exists(join(change, COMMITTED)));
}
