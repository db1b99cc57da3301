/**
 * Addresses of the guide's own pages and files. Every link of the site goes through here, so that a guide works at the
 * root of a host and below a sub-path alike.
 */

/** Where the guide stands: `/` or `/guide/`. Outside a site build (commands, tests) it is the root. */
const BASE: string = import.meta.env?.BASE_URL ?? '/';

/** The address of a page or file of the guide: `siteLink('safety/')` is `/guide/safety/` below `/guide/`. */
export function siteLink(path: string, base: string = BASE): string {
  return `${base.replace(/\/*$/, '/')}${path.replace(/^\/+/, '')}`;
}

/** The page of a water. */
export function waterLink(water: string): string {
  return siteLink(`${encodeURIComponent(water)}/`);
}

/** The sheet of a peg. */
export function pegLink(water: string, peg: string): string {
  return siteLink(`${encodeURIComponent(water)}/${encodeURIComponent(peg)}/`);
}

/** The page for who has drawn a peg of a water; with a peg, opened at it. */
export function drawLink(water: string, peg?: string): string {
  return `${siteLink(`draw/${encodeURIComponent(water)}/`)}${peg === undefined ? '' : `?peg=${encodeURIComponent(peg)}`}`;
}
