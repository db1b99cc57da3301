import { parsedJson } from './offline-list.ts';
import { unpackChanges } from './packed-changes.ts';

/**
 * How one text becomes another, by its tokens (`tokensOf`): so many kept, then what becomes of what follows, over and
 * over; the rest is kept. A number is added to a number in units of its last place, so that tables whose every figure
 * moved a little take few bytes; of a pair so many tokens are left out and a text put in.
 */
export type TextChange = readonly (number | readonly [leftOut: number, put: string])[];

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
  return unpackChanges(parsedJson(bytes));
}

/** Marks of pages, numbers, elements, and what stands between them: "8 lb" becomes "8 lb 4 oz" without the element behind it. */
const TOKENS = /\b[0-9a-f]{8}\b|\d+(?:\.\d+)?|<[^>\d]*>?|[^\d<]+?(?=[\d<]|\b[0-9a-f]{8}\b|$)/g;

/** A text in pieces that change or stay as one: together they are the text. */
export function tokensOf(text: string): readonly string[] {
  return text.match(TOKENS) ?? [];
}

/** The text that a change makes of another. */
export function changedText(text: string, change: TextChange): string {
  if (change.length === 0) return text;
  const tokens = tokensOf(text);
  const out: string[] = [];
  let at = 0;
  for (let i = 0; i + 1 < change.length; i += 2) {
    const kept = at + Number(change[i]);
    out.push(tokens.slice(at, kept).join(''));
    const step = change[i + 1] ?? 0;
    out.push(typeof step === 'number' ? numberPlus(tokens[kept] ?? '', step) : step[1]);
    at = kept + (typeof step === 'number' ? 1 : step[0]);
  }
  return out.concat(tokens.slice(at)).join('');
}

/** A number as text with something added in units of its last place: "1.09" and 2 are "1.11". */
export function numberPlus(text: string, units: number): string {
  const places = decimalsOf(text);
  const sum = String(unitsOf(text) + units).padStart(places + 1, '0');
  return places === 0 ? sum : `${sum.slice(0, -places)}.${sum.slice(-places)}`;
}

/** A number as text in units of its last place. */
export function unitsOf(text: string): number {
  return Number(text.replace('.', ''));
}

/** How many figures stand behind its point. */
export function decimalsOf(text: string): number {
  return text.includes('.') ? text.length - text.indexOf('.') - 1 : 0;
}
