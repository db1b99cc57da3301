import type { Fault } from '../fault.ts';
import type { NewFile } from '../folder-change/commit-change.ts';
import { readVenue } from '../read-venue.ts';
import type { VenueFiles } from '../venue-files.ts';

/** Everything that keeps a folder from being published. */
export function errorsOf(files: VenueFiles): readonly Fault[] {
  return readVenue(files).faults.filter(({ severity }) => severity === 'error');
}

/**
 * The errors of `after` that are not in `before`. One that is there already does not count, so that a round which closes a
 * peg under a line is taken in though the folder could not be built.
 */
export function newErrors(before: readonly Fault[], after: readonly Fault[]): readonly Fault[] {
  const known = new Set(before.map(identity));
  return after.filter((fault) => !known.has(identity(fault)));
}

/** A fault without its line: lines move when a field is added above them. */
function identity({ file, field, rule, found, expected }: Fault): string {
  return JSON.stringify([file, field, rule, found, expected]);
}

/** The folder as it would be. */
export function withChanges(files: VenueFiles, changed: readonly NewFile[]): VenueFiles {
  const texts = new Map(files.texts);
  const photos = new Map(files.photos);
  for (const { path, bytes } of changed) {
    if (bytes === null) {
      texts.delete(path);
      photos.delete(path.slice('photos/'.length));
    } else if (path.startsWith('photos/')) photos.set(path.slice('photos/'.length), bytes.length);
    else texts.set(path, new TextDecoder('utf-8', { ignoreBOM: true }).decode(bytes));
  }
  return { ...files, texts, photos };
}
