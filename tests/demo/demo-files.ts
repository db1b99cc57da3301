import { demoVenue } from './demo-venue.ts';
import { DEMO_MATCHES } from './matches.ts';
import { venueFiles } from './writing/venue-files.ts';

/** Every file of the committed demo venue, by its path inside `content/`. */
export function demoFiles(): Map<string, string> {
  const { venue, drawings } = demoVenue();
  const files = venueFiles(venue);
  for (const drawing of drawings) files.set(`photos/${drawing.file}`, drawing.svg);
  for (const [path, text] of DEMO_MATCHES) files.set(path, text);
  return files;
}
