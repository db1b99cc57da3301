import type { Fault, LeftOut } from './fault.ts';

/** A venue folder in memory. Paths are inside the folder, with forward slashes. */
export interface VenueFiles {
  /** The text of every record, log and map, by path. */
  readonly texts: ReadonlyMap<string, string>;
  /** Size in bytes of every picture, by its path below `photos/`. */
  readonly photos: ReadonlyMap<string, number>;
  /** Files that stand in the folder but could not be read; each has a fault. */
  readonly unread: ReadonlySet<string>;
  readonly faults: readonly Fault[];
  readonly leftOut: readonly LeftOut[];
}

/** A venue folder made of texts alone. */
export function venueFiles(
  texts: ReadonlyMap<string, string>,
  photos: ReadonlyMap<string, number> = new Map(),
): VenueFiles {
  return { texts, photos, unread: new Set(), faults: [], leftOut: [] };
}

/** Order of names as people count: 2 before 10, `14` before `14a`, capitals beside small letters. */
export function compareNaturally(a: string, b: string): number {
  return COLLATOR.compare(a, b) || (a < b ? -1 : a > b ? 1 : 0);
}

const COLLATOR = new Intl.Collator('en', { numeric: true });

/** Paths below a folder with an ending, in natural order. */
export function pathsBelow(files: VenueFiles, folder: string, ending: string): readonly string[] {
  return [...files.texts.keys()]
    .filter((path) => path.startsWith(`${folder}/`) && path.endsWith(ending))
    .sort(compareNaturally);
}

/** The name of a file without its folders and ending: `pegs/kiln-pool/23.md` gives `23`. */
export function fileStem(path: string): string {
  const name = path.slice(path.lastIndexOf('/') + 1);
  return name.slice(0, name.lastIndexOf('.'));
}
