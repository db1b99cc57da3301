import { writeFileSync } from 'node:fs';
import { type Disk, REAL_DISK } from '../../../src/content/folder-change/disk.ts';

/** The process was killed here. */
export class Killed extends Error {}

/**
 * A disk under a process that is killed at its step number `stopAt`: that step is not done (a file being written is left
 * half-written) and no later one is, so that not even clearing up happens.
 */
export function stoppingDisk(stopAt: number): { readonly disk: Disk; readonly steps: () => number } {
  let steps = 0;
  const step = (cut?: () => void): void => {
    steps++;
    if (steps === stopAt) cut?.();
    if (steps >= stopAt) throw new Killed();
  };
  const disk: Disk = {
    ...REAL_DISK,
    makeFolder: (path) => {
      step();
      REAL_DISK.makeFolder(path);
    },
    writeNew: (path, bytes) => {
      step(() => writeFileSync(path, bytes.subarray(0, Math.floor(bytes.length / 2))));
      REAL_DISK.writeNew(path, bytes);
    },
    copyMode: (like, path) => {
      step();
      REAL_DISK.copyMode(like, path);
    },
    rename: (from, to) => {
      step();
      REAL_DISK.rename(from, to);
    },
    remove: (path) => {
      step();
      REAL_DISK.remove(path);
    },
  };
  return { disk, steps: () => steps };
}
