import { randomUUID } from 'node:crypto';
import { join } from 'node:path';
import { ChangeRefused } from './change-refused.ts';
import type { Disk } from './disk.ts';
import { JOURNAL } from './journal.ts';

/** Name of the lock inside the journal. */
export const LOCK = 'lock.json';

/**
 * Lets one intake at a time write to a folder. A lock whose process is gone is taken away.
 * @returns what gives the lock back
 * @throws ChangeRefused where another intake is at work
 */
export function lockJournal(folder: string, disk: Disk): () => void {
  const journal = join(folder, JOURNAL);
  const lock = join(journal, LOCK);
  if (disk.isLink(journal))
    throw new ChangeRefused(`${journal} is a link to another place. Delete it and run this again.`);
  disk.makeFolder(journal);
  const mine = new TextEncoder().encode(JSON.stringify({ process: process.pid }));
  for (let attempt = 0; ; attempt++) {
    try {
      disk.writeNew(lock, mine);
      return () => {
        disk.remove(lock);
        if (disk.list(journal).length === 0) disk.remove(journal);
      };
    } catch (error) {
      if ((error as NodeJS.ErrnoException).code !== 'EEXIST') throw error;
    }
    const owner = ownerOf(lock, disk);
    if (owner === undefined) continue;
    if (attempt > 2 || (owner !== null && isRunning(owner))) {
      throw new ChangeRefused(
        `Another intake is at work in this folder (process ${owner ?? 'unknown'}). Wait for it; if there is none, delete ${lock}.`,
      );
    }
    takeAway(lock, journal, disk);
  }
}

/** The process that holds the lock; null where it does not say (stopped while it wrote), undefined where it is gone. */
function ownerOf(lock: string, disk: Disk): number | null | undefined {
  let text: string;
  try {
    text = new TextDecoder().decode(disk.read(lock));
  } catch {
    return undefined;
  }
  try {
    const { process: owner } = JSON.parse(text) as { process?: unknown };
    return Number.isInteger(owner) && (owner as number) > 0 ? (owner as number) : null;
  } catch {
    return null;
  }
}

function isRunning(owner: number): boolean {
  try {
    process.kill(owner, 0);
    return true;
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === 'EPERM';
  }
}

/** Moved first: of two that find the same old lock only one can move it. */
function takeAway(lock: string, journal: string, disk: Disk): void {
  const aside = join(journal, randomUUID());
  try {
    disk.rename(lock, aside);
  } catch {
    return;
  }
  disk.remove(aside);
}
