import { statSync } from 'node:fs';
import { join } from 'node:path';
import { REAL_DISK } from './disk.ts';
import { committedChanges, JOURNAL } from './journal.ts';
import { type PendingChange, pendingChange } from './pending-change.ts';

/** A reader that is overtaken by an intake this often in a row gives up; an intake takes a person's answer, so it is not. */
const MAX_READS = 5;

/**
 * Reads a venue folder as it was at one moment, and changes nothing in it: `read` is told of a change that waits to be
 * finished, and where a change came in between, the folder is read again. An intake moves its file in `rounds/` last, so
 * that folder's list tells; of other changes the place where they wait does.
 */
export async function readSettled<T>(folder: string, read: (pending: PendingChange | null) => Promise<T>): Promise<T> {
  for (let attempt = 1; ; attempt++) {
    const before = stateOf(folder);
    const result = await read(pendingChange(folder));
    if (stateOf(folder) === before || attempt === MAX_READS) return result;
  }
}

function stateOf(folder: string): string {
  const waiting = committedChanges(REAL_DISK, folder).flatMap((change) => [change, ...REAL_DISK.list(change)]);
  const journal = [folder, join(folder, JOURNAL)].map((place) => statSync(place, { throwIfNoEntry: false })?.mtimeMs);
  return [...REAL_DISK.list(join(folder, 'rounds')), ...waiting, ...journal].join('\n');
}
