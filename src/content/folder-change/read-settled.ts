import { join } from 'node:path';
import { REAL_DISK } from './disk.ts';
import { committedChanges } from './journal.ts';
import { settleFolder } from './settle-folder.ts';

/** A reader that is overtaken by an intake this often in a row gives up; an intake takes a person's answer, so it is not. */
const MOST_READS = 5;

/**
 * Reads a venue folder as it was at one moment: a change that was stopped half-way is finished first, and where an intake
 * came in between, the folder is read again. An intake moves its file in `rounds/` last, so that folder's list tells.
 * @throws UnfinishedChange as `settleFolder` does
 */
export async function readSettled<T>(folder: string, read: () => Promise<T>): Promise<T> {
  for (let attempt = 1; ; attempt++) {
    settleFolder(folder);
    const before = roundsOf(folder);
    const result = await read();
    const isWhole = committedChanges(REAL_DISK, folder).length === 0 && roundsOf(folder) === before;
    if (isWhole || attempt === MOST_READS) return result;
  }
}

function roundsOf(folder: string): string {
  return REAL_DISK.list(join(folder, 'rounds')).join('\n');
}
