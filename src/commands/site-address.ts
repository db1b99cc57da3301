import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parseDocument } from 'yaml';
import { venueFolder } from './venue-folder.ts';

/** Where the guide will stand: its origin, if one is stated, and the path below it, with a slash at each end. */
export interface SiteAddress {
  readonly site: string | undefined;
  readonly base: string;
}

/** Splits `https://club.example/guide/` into origin and base. An unreadable address counts as none: `check` reports it. */
export function splitAddress(address: string | undefined): SiteAddress {
  if (address === undefined || address === '') return { site: undefined, base: '/' };
  if (address.startsWith('/')) return { site: undefined, base: withSlashes(address) };
  if (!URL.canParse(address)) return { site: undefined, base: '/' };
  const url = new URL(address);
  return { site: url.origin, base: withSlashes(url.pathname) };
}

/** The address for a build: `SITE_ADDRESS` (a whole address, or only a path such as `/guide/`), else the one in `venue.md`. */
export function siteAddress(environment: Readonly<Record<string, string | undefined>>): SiteAddress {
  const stated = environment.SITE_ADDRESS;
  if (stated !== undefined) return splitAddress(stated);
  return splitAddress(addressInVenue(venueFolder(undefined, environment)));
}

function addressInVenue(folder: string): string | undefined {
  try {
    const text = readFileSync(join(folder, 'venue.md'), 'utf8').replace(/^\uFEFF/, '');
    const frontMatter = /^---\r?\n([\s\S]*?)\r?\n---/.exec(text)?.[1];
    const address: unknown = frontMatter === undefined ? undefined : parseDocument(frontMatter).get('address');
    return typeof address === 'string' ? address : undefined;
  } catch {
    return undefined;
  }
}

function withSlashes(path: string): string {
  const inner = path.replace(/^\/+|\/+$/g, '');
  return inner === '' ? '/' : `/${inner}/`;
}
