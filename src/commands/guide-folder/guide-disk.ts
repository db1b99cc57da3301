import { existsSync, readdirSync, rmSync } from 'node:fs';
import { renamePatiently } from '../../content/folder-change/patient-rename.ts';

/** The few things a build does to the folder of a guide, one after the other, so that a test can stop before any of them. */
export interface GuideDisk {
  readonly exists: (path: string) => boolean;
  readonly list: (folder: string) => readonly string[];
  readonly rename: (from: string, to: string) => void;
  readonly remove: (path: string) => void;
}

/** The real disk. */
export const REAL_GUIDE_DISK: GuideDisk = {
  exists: existsSync,
  list: (folder) => (existsSync(folder) ? readdirSync(folder).sort() : []),
  rename: renamePatiently,
  remove: (path) => rmSync(path, { recursive: true, force: true, maxRetries: 5 }),
};
