import type { Day } from '../domain/day.ts';
import type { PendingChange } from './folder-change/pending-change.ts';
import { readSettled } from './folder-change/read-settled.ts';
import { readFolder } from './read-folder.ts';
import { type Progress, readVenue, type VenueRead } from './read-venue.ts';
import { faultOfFile } from './sources/source.ts';
import type { VenueFiles } from './venue-files.ts';

/**
 * Reads and checks the venue folder at a path, as it was at one moment, and changes nothing in it. A change that an intake
 * left unfinished is read as if it were finished, and is a fault until it is. Never throws for what is in the folder.
 * @param progress told of each file that was read and each check that was made
 */
export async function loadVenue(folder: string, today?: Day, progress?: Progress): Promise<VenueRead> {
  const files = await readSettled(folder, async (pending) => withPending(await readFolder(folder), pending));
  return readVenue(files, today, progress);
}

function withPending(files: VenueFiles, pending: PendingChange | null): VenueFiles {
  if (pending === null) return files;
  const texts = new Map(files.texts);
  const photos = new Map(files.photos);
  for (const [path, bytes] of pending.files) {
    if (bytes === null) {
      texts.delete(path);
      photos.delete(path.slice('photos/'.length));
    } else if (path.startsWith('photos/')) photos.set(path.slice('photos/'.length), bytes.length);
    else texts.set(path, new TextDecoder('utf-8', { ignoreBOM: true }).decode(bytes));
  }
  const fault = faultOfFile('', {
    rule: pending.isSound ? 'intake-unfinished' : 'intake-damaged',
    found: pending.isSound ? 'an intake that was stopped in the middle' : 'a change that no intake of this folder left',
    expected: 'a folder no intake has left half-done',
    mend: pending.message,
  });
  return { ...files, texts, photos, faults: [...files.faults, fault] };
}
