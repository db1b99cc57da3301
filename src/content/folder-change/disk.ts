import {
  accessSync,
  chmodSync,
  closeSync,
  constants,
  fsyncSync,
  lstatSync,
  mkdirSync,
  openSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  writeSync,
} from 'node:fs';
import { dirname } from 'node:path';
import { renamePatiently } from './patient-rename.ts';

/** The few things a change of a folder does to a disk, one after the other, so that a test can stop between any two. */
export interface Disk {
  /** Whether something stands there; a link counts as itself. */
  readonly exists: (path: string) => boolean;
  readonly isLink: (path: string) => boolean;
  readonly list: (folder: string) => string[];
  /** Whether names may be put into a folder; of one that is not there, into the nearest around it. */
  readonly mayWriteIn: (folder: string) => boolean;
  readonly read: (path: string) => Uint8Array;
  readonly makeFolder: (path: string) => void;
  /** Writes a new file and waits until it is on the disk; fails where one stands there already. */
  readonly writeNew: (path: string, bytes: Uint8Array) => void;
  /** Gives `path` the permissions of `like`. */
  readonly copyMode: (like: string, path: string) => void;
  readonly rename: (from: string, to: string) => void;
  /** Waits until the names in a folder are on the disk. */
  readonly syncFolder: (folder: string) => void;
  readonly remove: (path: string) => void;
}

/** The real disk. Every call blocks: nothing else of this process runs between two steps. */
export const REAL_DISK: Disk = {
  exists: (path) => lstatSync(path, { throwIfNoEntry: false }) !== undefined,
  isLink: (path) => lstatSync(path, { throwIfNoEntry: false })?.isSymbolicLink() === true,
  list: (folder) =>
    statSync(folder, { throwIfNoEntry: false })?.isDirectory() === true ? readdirSync(folder).sort() : [],
  mayWriteIn: (folder) => {
    let nearest = folder;
    while (lstatSync(nearest, { throwIfNoEntry: false }) === undefined && dirname(nearest) !== nearest) {
      nearest = dirname(nearest);
    }
    try {
      accessSync(nearest, constants.W_OK | constants.X_OK);
      return true;
    } catch {
      return false;
    }
  },
  read: (path) => readFileSync(path),
  makeFolder: (path) => mkdirSync(path, { recursive: true }),
  writeNew: (path, bytes) => {
    const file = openSync(path, 'wx');
    try {
      for (let written = 0; written < bytes.length; ) written += writeSync(file, bytes, written);
      fsyncSync(file);
    } finally {
      closeSync(file);
    }
  },
  copyMode: (like, path) => chmodSync(path, statSync(like).mode),
  rename: renamePatiently,
  syncFolder: (folder) => {
    try {
      const handle = openSync(folder, 'r');
      fsyncSync(handle);
      closeSync(handle);
    } catch {
      // Some systems cannot open a folder; they write names at once.
    }
  },
  remove: (path) => rmSync(path, { recursive: true, force: true, maxRetries: 5 }),
};
