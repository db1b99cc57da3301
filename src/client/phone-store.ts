/** What the phone keeps small things in; null where a browser refuses it, as some do in private windows. */
export function phoneStore(): Storage | null {
  try {
    return localStorage;
  } catch {
    return null;
  }
}
