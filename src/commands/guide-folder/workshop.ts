import { cpSync, existsSync, mkdirSync, readdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { renamePatiently } from '../../content/folder-change/patient-rename.ts';
import { PACKAGE_FOLDER } from '../package-folder.ts';
import { isRunning } from './is-running.ts';

/** Where guides are put together: below the program's own packages, since the pages run from there before they are written. */
const WORKSHOPS = join(PACKAGE_FOLDER, 'node_modules', '.cache', 'peg-atlas', 'workshops');

/** Clears away what builds left that were killed. What the disk refuses waits for the next build. */
export function tidyWorkshops(): void {
  if (!existsSync(WORKSHOPS)) return;
  for (const name of readdirSync(WORKSHOPS)) {
    if (isRunning(Number(name))) continue;
    try {
      rmSync(join(WORKSHOPS, name), { recursive: true, force: true });
    } catch {
      // Nobody needs it away but for the room it takes.
    }
  }
}

/** A folder for the pages of this process alone. */
export function openWorkshop(): string {
  mkdirSync(WORKSHOPS, { recursive: true });
  tidyWorkshops();
  const own = join(WORKSHOPS, String(process.pid));
  rmSync(own, { recursive: true, force: true });
  mkdirSync(own);
  return own;
}

/** A folder cannot be moved to another disk, for which Windows has no word of its own; what may not be written there refuses the copy too. */
const NOT_MOVED = new Set(['EXDEV', 'EPERM', 'EACCES']);

/** Takes a finished guide out of its workshop to a folder that may lie on another disk. */
export function bringOut(workshop: string, to: string, rename = renamePatiently): void {
  rmSync(to, { recursive: true, force: true });
  try {
    rename(workshop, to);
  } catch (error) {
    if (!NOT_MOVED.has((error as NodeJS.ErrnoException).code ?? '')) throw error;
    cpSync(workshop, to, { recursive: true });
    rmSync(workshop, { recursive: true, force: true });
  }
}
