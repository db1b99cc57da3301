import type { VenueRead } from '../content/read-venue.ts';
import type { Survey } from '../ground/survey.ts';
import type { Ratings } from '../ratings/ratings.ts';

/** The pages run as a bundle of their own in the same process: only what is global is theirs too. */
const PLACE = Symbol.for('peg-atlas.venue-read');

/** What a command hands over to the pages of a folder. */
export interface HandedOver {
  readonly folder: string;
  readonly read: VenueRead;
  /** Of that venue, where the command has surveyed it already. */
  readonly survey?: Survey;
  /** Ratings to show, as soon as they are there; without them the pages ask for those of the log. */
  readonly ratings?: Ratings | Promise<Ratings>;
  /** Whether those are of an earlier log, while new ones are being worked out. */
  readonly areRatingsOld?: boolean;
}

/** Keeps what a command has read and checked for the pages it is about to build, so that a folder is read once. */
export function handOver(handed: HandedOver): void {
  (globalThis as { [PLACE]?: HandedOver })[PLACE] = handed;
}

/** What was handed over of a folder, null where nothing was. */
export function handedOver(folder: string): HandedOver | null {
  const kept = (globalThis as { [PLACE]?: HandedOver })[PLACE];
  return kept?.folder === folder ? kept : null;
}
