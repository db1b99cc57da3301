import { type Parsed, parsed, unreadable } from './parsed.ts';

/** Where a guide will stand: its origin, if one is stated, and the path below it, with a slash at each end. */
export interface SiteAddress {
  readonly site: string | undefined;
  readonly base: string;
}

/** No address stated: the guide stands at the top of whatever host serves it. */
export const NO_ADDRESS: SiteAddress = { site: undefined, base: '/' };

/** A step of a path that every host, browser and file system reads alike: the unreserved characters of RFC 3986, section 2.3. */
const STEP = /^[A-Za-z0-9_~-][A-Za-z0-9._~-]*$/;
const HOST = /^(?:[a-z0-9](?:[a-z0-9-]*[a-z0-9])?)(?:\.[a-z0-9](?:[a-z0-9-]*[a-z0-9])?)*(?::\d{1,5})?$/i;

/**
 * Reads the address a guide is published at: `https://club.example/guide/`, or only a path such as `/guide/`. The one
 * reading of it: what this accepts a build can use.
 */
export function parseSiteAddress(text: string): Parsed<SiteAddress> {
  const [, origin, host, path] = /^(https?:\/\/([^/?#]*))?(\/.*)?$/i.exec(text.trim()) ?? [];
  if ((origin === undefined && path === undefined) || (host !== undefined && !HOST.test(host))) return refused(WHOLE);
  const steps = (path ?? '/').split('/').filter((step) => step !== '');
  if ((path ?? '/').includes('//') || !steps.every((step) => STEP.test(step))) return refused(PLAIN);
  return parsed({ site: origin?.toLowerCase(), base: steps.length === 0 ? '/' : `/${steps.join('/')}/` });
}

const WHOLE = 'Write the whole address with https:// in front.';
const PLAIN =
  'Use only letters, digits, hyphens, points and underscores between the slashes, and nothing behind ? or #.';

function refused(mend: string) {
  return unreadable('address', 'an address such as https://club.example/guide/', mend);
}
