/**
 * The address of a page or file as the offline list writes it: below the base, each part encoded one way, a page by its
 * folder. Null for an address outside the guide.
 */
export function pathBelow(base: string, pathname: string): string | null {
  if (!pathname.startsWith(base)) return null;
  return pathname
    .slice(base.length)
    .replace(/(^|\/)index\.html$/, '$1')
    .split('/')
    .map(encodedPart)
    .join('/');
}

function encodedPart(part: string): string {
  try {
    return encodeURIComponent(decodeURIComponent(part));
  } catch {
    return part;
  }
}

/** The key of the peg whose sheet an address is (`kiln-pool/14`), null for any other page. */
export function pegOfPath(path: string): string | null {
  const parts = /^([^/]+)\/([^/]+)\/$/.exec(path);
  if (parts === null) return null;
  return parts.slice(1).map(decoded).join('/');
}

/** The water whose page, or a page below which, an address is. */
export function waterOfPath(path: string): string | null {
  const [water, ...rest] = path.split('/');
  return rest.length > 0 && water !== undefined && water !== '' ? decoded(water) : null;
}

function decoded(part: string): string {
  try {
    return decodeURIComponent(part);
  } catch {
    return part;
  }
}
