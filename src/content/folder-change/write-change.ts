import { ChangeRefused } from './change-refused.ts';
import { commitChange, type NewFile } from './commit-change.ts';
import { DamagedJournal } from './journal.ts';
import { UnfinishedChange } from './settle-folder.ts';

/**
 * Writes a change of a folder, all or nothing.
 * @returns null, or a sentence that says what is so where it could not be written
 */
export function writeChange(folder: string, files: readonly NewFile[]): string | null {
  try {
    commitChange(folder, files);
    return null;
  } catch (error) {
    return whyNotWritten(error);
  }
}

/**
 * What is so where a folder could not be changed, as a sentence. What a decided change meets has its own error, so whatever
 * else a disk says was said before anything was changed.
 * @throws the error itself where it is a fault of the program
 */
export function whyNotWritten(error: unknown): string {
  if (error instanceof ChangeRefused || error instanceof UnfinishedChange || error instanceof DamagedJournal) {
    return error.message;
  }
  const { code } = error as NodeJS.ErrnoException;
  if (code === undefined) throw error;
  if (code === 'ENOSPC' || code === 'EDQUOT') return 'The disk is full. Nothing was changed.';
  if (code === 'EACCES' || code === 'EPERM' || code === 'EROFS') {
    return 'The folder may not be written to, or another program has a file of it open. Nothing was changed.';
  }
  return `The disk refused to write (${code}). Nothing was changed.`;
}
