import { readSettled } from './folder-change/read-settled.ts';
import { UnfinishedChange } from './folder-change/settle-folder.ts';
import { readFolder } from './read-folder.ts';
import { readVenue, type VenueRead } from './read-venue.ts';
import { faultOfFile } from './sources/source.ts';
import { venueFiles } from './venue-files.ts';

/** Reads and checks the venue folder at a path, as it was at one moment. Never throws for what is in it. */
export async function loadVenue(folder: string): Promise<VenueRead> {
  try {
    return readVenue(await readSettled(folder, () => readFolder(folder)));
  } catch (error) {
    if (!(error instanceof UnfinishedChange)) throw error;
    const fault = faultOfFile('', {
      rule: 'intake-unfinished',
      found: 'an intake that was stopped in the middle',
      expected: 'a folder no intake has left half-done',
      mend: error.message,
    });
    return { ...readVenue(venueFiles(new Map())), faults: [fault] };
  }
}
