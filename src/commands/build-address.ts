import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { handedOver } from '../atlas/handed-over.ts';
import { readMarkdownRecord } from '../content/sources/front-matter.ts';
import { NO_ADDRESS, parseSiteAddress, type SiteAddress } from '../domain/site-address.ts';
import type { Venue } from '../domain/venue.ts';
import { UsageError } from './read-arguments.ts';
import { venueFolder } from './venue-folder.ts';

/**
 * The address for a build: `SITE_ADDRESS` (a whole address, or only a path such as `/guide/`), else the one in `venue.md`, as
 * the folder was read where it was handed over.
 * @param venue what was read of the folder, where its caller has it
 * @throws UsageError where `SITE_ADDRESS` is no address. One in `venue.md` is checked with the folder, and counts as none here.
 */
export function siteAddress(
  environment: Readonly<Record<string, string | undefined>>,
  venue: Venue | null = handedOver(venueFolder(undefined, environment))?.read.venue ?? null,
): SiteAddress {
  const stated = environment.SITE_ADDRESS;
  if (stated === '') return NO_ADDRESS;
  if (stated !== undefined) {
    const address = parseSiteAddress(stated);
    if (!address.ok)
      throw new UsageError(`Unexpected SITE_ADDRESS "${stated}", expected ${address.expected}. ${address.mend}`);
    return address.value;
  }
  const stands = venue === null ? addressInVenue(venueFolder(undefined, environment)) : venue.settings.address;
  const address = parseSiteAddress(stands ?? '');
  return address.ok ? address.value : NO_ADDRESS;
}

function addressInVenue(folder: string): string | undefined {
  try {
    const text = new TextDecoder('utf-8', { ignoreBOM: true }).decode(readFileSync(join(folder, 'venue.md')));
    const values = readMarkdownRecord('venue.md', text).record?.source.value as { address?: unknown } | undefined;
    return typeof values?.address === 'string' ? values.address : undefined;
  } catch {
    return undefined;
  }
}
