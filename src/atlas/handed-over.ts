import type { VenueRead } from '../content/read-venue.ts';

/** The pages run as a bundle of their own in the same process: only what is global is theirs too. */
const PLACE = Symbol.for('peg-atlas.venue-read');

interface HandedOver {
  readonly folder: string;
  readonly read: VenueRead;
}

/** Keeps what a command has read and checked for the pages it is about to build, so that a folder is read once. */
export function handOver(folder: string, read: VenueRead): void {
  (globalThis as { [PLACE]?: HandedOver })[PLACE] = { folder, read };
}

/** What was handed over of a folder, null where nothing was. */
export function handedOver(folder: string): VenueRead | null {
  const kept = (globalThis as { [PLACE]?: HandedOver })[PLACE];
  return kept?.folder === folder ? kept.read : null;
}
