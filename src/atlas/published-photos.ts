import { join } from 'node:path';
import type { Venue } from '../domain/venue.ts';
import { keepCopies } from './photo-store.ts';

/** The files of all photographs that records show, each once, in an order that does not depend on them. */
export function publishedPhotos({ pegs }: Pick<Venue, 'pegs'>, folder: string): readonly string[] {
  const names = pegs.flatMap(({ photos, hazards }) => [
    ...photos.map(({ file }) => file),
    ...hazards.flatMap(({ photo }) => (photo === undefined ? [] : [photo])),
  ]);
  return [...new Set(names)].sort().map((name) => join(folder, 'photos', name));
}

/**
 * Makes the copies of photographs before a page asks for them, from the last on: so they meet the pages, which ask from the first on.
 * What cannot be made is left to the page that asks for it, which then says so.
 */
export async function makePhotoCopies(files: readonly string[]): Promise<void> {
  for (const file of files.toReversed()) {
    try {
      await keepCopies(file);
    } catch {
      // Told by the page that shows it.
    }
  }
}
