import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileStem, type VenueFiles } from '../venue-files.ts';
import type { FolderFiles } from './staged-files.ts';

/** A venue folder that was read, as an intake looks at it. Pictures are looked up on the disk: only their sizes were read. */
export function folderFiles(folder: string, { texts }: VenueFiles): FolderFiles {
  const below = (prefix: string): string[] => [...texts.keys()].filter((path) => path.startsWith(prefix));
  const bytes = (path: string): Uint8Array | null => {
    const text = texts.get(path);
    return text === undefined ? bytesOnDisk(join(folder, path)) : new TextEncoder().encode(text);
  };
  return {
    bytes,
    text: (path) => texts.get(path) ?? null,
    rounds: below('rounds/').map((path) => path.slice('rounds/'.length)),
    pegsOf: (water) => below(`pegs/${water}/`).map(fileStem),
  };
}

function bytesOnDisk(path: string): Uint8Array | null {
  try {
    return readFileSync(path);
  } catch {
    return null;
  }
}
