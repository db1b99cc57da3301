import { type Day, isDay } from '../../domain/day.ts';
import { shortDigest } from './digest.ts';

/** The address of the list, and of the now file, below the guide's base. */
export const LIST_PATH = 'offline-list.json';
export const NOW_PATH = 'now.json';

/**
 * Which files belong together: `first` is what a phone needs before anything else, `guide` the rest of what visitors
 * read, `pictures` are kept once they were seen, and any other set is fetched once one of its pages is used.
 */
export type FileSet = 'first' | 'guide' | 'pictures' | (string & {});

/** The set of what visitors read beyond what is needed first. */
export const VISITORS: FileSet = 'guide';

/** A file of the guide: its address below the base, the digest of its bytes, its set. */
export type ListedFile = readonly [path: string, digest: string, set: FileSet];

/** Every file of one edition of the guide, in the order in which a phone fetches them. */
export interface OfflineList {
  readonly edition: string;
  readonly day: Day;
  readonly files: readonly ListedFile[];
  /** Digest of all the above. */
  readonly check: string;
}

/** The text whose digest is a list's `check`. */
export function checkedText({ edition, day, files }: Omit<OfflineList, 'check'>): string {
  return JSON.stringify([edition, day, files]);
}

/** Reads a list; null for anything that is not wholly one: half a file, a host's own page, another list's check. */
export async function readOfflineList(bytes: Uint8Array): Promise<OfflineList | null> {
  const list = parsedJson(bytes) as Partial<OfflineList> | null;
  if (list === null || typeof list !== 'object') return null;
  const { edition, day, files, check } = list;
  if (typeof edition !== 'string' || typeof day !== 'string' || !isDay(day)) return null;
  if (!Array.isArray(files) || !files.every(isListedFile)) return null;
  const whole = { edition, day, files };
  return check === (await shortDigest(checkedText(whole))) ? { ...whole, check } : null;
}

function isListedFile(file: unknown): file is ListedFile {
  return Array.isArray(file) && file.length === 3 && file.every((part) => typeof part === 'string');
}

/** JSON from bytes, null where it is none. */
export function parsedJson(bytes: Uint8Array): unknown {
  try {
    return JSON.parse(new TextDecoder().decode(bytes));
  } catch {
    return null;
  }
}

/** The files by their addresses. */
export function digestsByPath(list: OfflineList | null): ReadonlyMap<string, string> {
  return new Map(list?.files.map(([path, digest]) => [path, digest]));
}
