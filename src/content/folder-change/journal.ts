import { createHash } from 'node:crypto';
import { join } from 'node:path';
import type { Disk } from './disk.ts';
import { whyUnsafe } from './safe-path.ts';

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
  /** SHA-256 of what is to be there; null where the file is to be taken away, and what is staged is empty. */
  readonly after: string | null;
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

/** A journal that cannot be what an intake of this folder left: broken, or made by somebody else. */
export class DamagedJournal extends Error {}

const EMPTY = contentHash(new Uint8Array());
const HASH = /^[0-9a-f]{64}$/;
const MAX_ENTRIES = 10_000;

/**
 * The files of a change that counts as made, each held against what an intake writes: its path lies inside the folder and
 * passes no link, and what is still waiting is what was meant. Null where the change is gone.
 * @throws DamagedJournal where any of it is otherwise; nothing of it is to be trusted then
 */
export function readJournal(folder: string, change: string, disk: Disk): readonly JournalEntry[] | null {
  const damaged = (why: string) =>
    new DamagedJournal(
      `The change that waits in ${change} is not what an intake of this folder leaves: ${why}. Nothing of it was made. Delete the folder ${join(folder, JOURNAL)}, and take the round in again.`,
    );
  for (const path of [join(folder, JOURNAL), change, join(change, COMMITTED)]) {
    if (disk.isLink(path)) throw damaged('it is reached by a link');
  }
  let list: unknown;
  try {
    list = JSON.parse(new TextDecoder().decode(disk.read(join(change, COMMITTED))));
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return null;
    if (error instanceof SyntaxError) throw damaged('its list cannot be read');
    throw error;
  }
  if (!Array.isArray(list) || list.length > MAX_ENTRIES || !list.every(isEntry))
    throw damaged('its list is no list of files');
  const entries: readonly JournalEntry[] = list;
  const places = new Set(entries.flatMap(({ path, staged }) => [path, `/${staged}`]));
  if (places.size < entries.length * 2) throw damaged('it names a file twice');
  for (const { path, staged, after } of entries) {
    const unsafe = whyUnsafe(folder, path, disk);
    if (unsafe !== null) throw damaged(`it would write ${path}`);
    if (disk.isLink(join(change, staged))) throw damaged('it is reached by a link');
    const waiting = fileHash(disk, join(change, staged));
    if (waiting !== null && waiting !== (after ?? EMPTY))
      throw damaged(`what it would write to ${path} is not what was meant`);
  }
  return entries;
}

function isEntry(value: unknown): value is JournalEntry {
  if (typeof value !== 'object' || value === null) return false;
  const { path, staged, before, after } = value as Record<string, unknown>;
  return (
    typeof path === 'string' &&
    path.length <= 300 &&
    typeof staged === 'string' &&
    /^\d{1,5}\.new$/.test(staged) &&
    (before === null || (typeof before === 'string' && HASH.test(before))) &&
    (after === null || (typeof after === 'string' && HASH.test(after)))
  );
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
