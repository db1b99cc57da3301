import { parsedJson } from './offline-list.ts';

/** How one text becomes another: so many characters kept, so many left out, a text put in, over and over; the rest is kept. */
export type TextChange = readonly (number | string)[];

/** What changed from one edition of a guide to the next, file by file. */
export interface GuideChanges {
  readonly from: string;
  readonly to: string;
  /** By address. A file that is not among them did not change, or is fetched whole. */
  readonly files: Readonly<Record<string, TextChange>>;
}

/** Where the changes since an edition lie, below the guide's base. */
export function changesPath(edition: string): string {
  return `changes/${edition}.json`;
}

/** Reads changes; null for anything that is none. Whether what comes of them is right is for the list's digests to say. */
export function readChanges(bytes: Uint8Array): GuideChanges | null {
  const changes = parsedJson(bytes) as Partial<GuideChanges> | null;
  if (changes === null || typeof changes !== 'object') return null;
  const { from, to, files } = changes;
  if (typeof from !== 'string' || typeof to !== 'string' || typeof files !== 'object' || files === null) return null;
  return Object.values(files).every(isTextChange) ? { from, to, files } : null;
}

function isTextChange(change: unknown): change is TextChange {
  return Array.isArray(change) && change.every((step) => typeof step === 'string' || Number.isInteger(step));
}

/** The text that a change makes of another. */
export function changedText(text: string, change: TextChange): string {
  let at = 0;
  let out = '';
  for (let i = 0; i + 2 < change.length; i += 3) {
    const [kept, leftOut, put] = change.slice(i, i + 3);
    out += text.slice(at, at + Number(kept)) + String(put);
    at += Number(kept) + Number(leftOut);
  }
  return out + text.slice(at);
}
