/** The peg that an address such as `#map-14a` asks for; null where it asks for none. */
export function askedPeg(hash: string): string | null {
  if (!hash.startsWith('#map-')) return null;
  try {
    return decodeURIComponent(hash.slice('#map-'.length));
  } catch {
    return null;
  }
}
