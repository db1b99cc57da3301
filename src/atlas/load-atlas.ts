import { resolve } from 'node:path';
import { formatFaults } from '../content/format-fault.ts';
import { loadVenue } from '../content/load-venue.ts';
import type { VenueRead } from '../content/read-venue.ts';
import { surveyVenue } from '../ground/survey-venue.ts';
import { type Atlas, makeAtlas } from './atlas.ts';
import { handedOver } from './handed-over.ts';
import { withGround } from './rating-ground.ts';
import { loadRatings } from './ratings-cache.ts';

let read: Promise<VenueRead> | undefined;
let atlas: Promise<Atlas> | undefined;

/**
 * The one place where a site build takes the venue folder from: every page draws from this promise. The folder is that of
 * `VENUE_DIR`, else `content`. Rejects with every fault's sentence where the folder has faults.
 */
export function loadAtlas(): Promise<Atlas> {
  atlas ??= readAtlas(venueDirectory());
  return atlas;
}

/** The folder of this build as it was read for the atlas. */
export function loadRead(): Promise<VenueRead> {
  const folder = venueDirectory();
  read ??= Promise.resolve(handedOver(folder)?.read ?? loadVenue(folder));
  return read;
}

/** The venue folder of this build. */
export function venueDirectory(): string {
  return resolve(process.env.VENUE_DIR || 'content');
}

async function readAtlas(folder: string): Promise<Atlas> {
  const handed = handedOver(folder);
  const { venue, faults } = await loadRead();
  if (venue === null) throw new Error([`Faults in the venue folder ${folder}:`, ...formatFaults(faults)].join('\n'));
  const survey = handed?.survey ?? surveyVenue(venue);
  return makeAtlas(venue, survey, await (handed?.ratings ?? loadRatings(withGround(venue, survey))));
}
