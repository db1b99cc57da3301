import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { type GeneratedVenue, makeVenue, type VenueOptions } from './make-venue.ts';
import { venueFiles } from './writing/venue-files.ts';

/** Writes text files below a folder, by their paths inside it. */
export function writeFiles(files: ReadonlyMap<string, string>, folder: string): void {
  for (const [path, text] of files) {
    const file = join(folder, path);
    mkdirSync(dirname(file), { recursive: true });
    writeFileSync(file, text);
  }
}

/** Makes a venue of any size, writes it into a folder and returns it with its truth. */
export function writeVenue(options: Partial<VenueOptions>, folder: string): GeneratedVenue {
  const generated = makeVenue(options);
  writeFiles(venueFiles(generated.venue), folder);
  return generated;
}
