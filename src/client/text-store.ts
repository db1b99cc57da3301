/** What of a browser's store is used: `localStorage`, or a stand-in. */
export type TextStore = Pick<Storage, 'getItem' | 'setItem' | 'removeItem'>;

/** The name of what the guide below a base keeps: two guides of one host keep apart. */
export function storeName(base: string, of: string): string {
  return `peg-atlas${base}${of}`;
}

/** Keeps a text under a name; null forgets it. False where the phone refuses, as with a full store or a private window. */
export function keepText(store: TextStore | null, name: string, text: string | null): boolean {
  if (store === null) return false;
  try {
    if (text === null) store.removeItem(name);
    else store.setItem(name, text);
    return true;
  } catch {
    return false;
  }
}
