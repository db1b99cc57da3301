import { type Fed, MAX_FED_TEXT } from '../../domain/fed.ts';
import type { Caught } from '../../match-day/pace.ts';
import { MAX_NET_GRAMS } from '../../match-day/scales.ts';
import { MAX_CAUGHT, MAX_FED } from '../../match-day/slip.ts';
import { newReference } from '../new-reference.ts';
import { keepText, storeName, type TextStore } from '../text-store.ts';

/** What somebody aims at. */
export type Target = { readonly kind: 'frame' | 'win' } | { readonly kind: 'own'; readonly grams: number };

/** One angler's match on a peg, as their phone keeps it: on the phone alone, and without a name. */
export interface Outing {
  /** Of the slip it may become: random, and new with every outing. Older outings have none. */
  readonly id?: string;
  readonly peg: string;
  /** The club's match; null for a peg that was chosen or a match the guide does not know. */
  readonly match: string | null;
  /** The all in, as an instant: a match may end on another day. Null until it was given. */
  readonly start: string | null;
  readonly hours: number;
  readonly target: Target;
  readonly caught: readonly Caught[];
  /** What was fed and when; older outings have none. */
  readonly fed?: readonly Fed[];
  /** For the club's slip, in the angler's words; empty where nothing was said. */
  readonly spot: string;
  readonly method: string;
  readonly bait: string;
  readonly lines: string;
  readonly waterDegreesC: string;
}

/** Where outings of a water are kept. */
export interface OutingPlace {
  readonly base: string;
  readonly water: string;
  readonly peg: string;
}

/** Hours of a match that says none (common practice, no source). */
const USUAL_HOURS = 5;
export const MAX_HOURS = 24;
const MAX_TEXT = 80;
const SLIP_ID_LENGTH = 8;

/** A match not yet begun. */
export function newOuting(peg: string, match: string | null, hours: number | null): Outing {
  return {
    id: newReference(SLIP_ID_LENGTH),
    peg,
    match,
    start: null,
    hours: hours ?? USUAL_HOURS,
    target: { kind: 'frame' },
    caught: [],
    fed: [],
    spot: '',
    method: '',
    bait: '',
    lines: '',
    waterDegreesC: '',
  };
}

/** What is kept for a peg; null where nothing is, or nothing that can be read. */
export function readOuting(store: TextStore | null, place: OutingPlace): Outing | null {
  try {
    const text = store?.getItem(nameOf(place));
    const kept: unknown = text === null || text === undefined ? null : JSON.parse(text);
    return isOuting(kept) && kept.peg === place.peg ? kept : null;
  } catch {
    return null;
  }
}

/** Keeps it; false where the phone refuses, as with a full store or a private window. */
export function keepOuting(store: TextStore | null, place: OutingPlace, outing: Outing): boolean {
  return keepText(store, nameOf(place), JSON.stringify(outing));
}

/** Forgets what is kept for a peg. */
export function forgetOuting(store: TextStore | null, place: OutingPlace): void {
  store?.removeItem(nameOf(place));
}

/** The words for the club's slip. */
export function slipWords({ spot, method, bait, lines, waterDegreesC }: Outing) {
  return { spot, method, bait, lines, waterDegreesC };
}

/** Minutes since the all in; null until it was given. */
export function minuteOf({ start }: Pick<Outing, 'start'>, now: Date): number | null {
  return start === null ? null : (now.getTime() - Date.parse(start)) / 60_000;
}

function nameOf({ base, water, peg }: OutingPlace): string {
  return storeName(base, `outing/${water}/${peg}`);
}

function isOuting(value: unknown): value is Outing {
  if (typeof value !== 'object' || value === null) return false;
  const { id, peg, match, start, hours, target, caught, fed = [], ...texts } = value as Record<string, unknown>;
  return (
    (id === undefined || (typeof id === 'string' && /^[a-z0-9]{8}$/.test(id))) &&
    typeof peg === 'string' &&
    (match === null || typeof match === 'string') &&
    (start === null || (typeof start === 'string' && !Number.isNaN(Date.parse(start)))) &&
    typeof hours === 'number' &&
    hours > 0 &&
    hours <= MAX_HOURS &&
    isTarget(target) &&
    Array.isArray(caught) &&
    caught.length <= MAX_CAUGHT &&
    caught.every(isCaught) &&
    Array.isArray(fed) &&
    fed.length <= MAX_FED &&
    fed.every(isFed) &&
    ['spot', 'method', 'bait', 'lines', 'waterDegreesC'].every((name) => isText(texts[name]))
  );
}

function isFed(value: unknown): value is Fed {
  const { minute, what } = (value ?? {}) as Record<string, unknown>;
  return typeof minute === 'number' && Number.isFinite(minute) && isText(what) && what.length <= MAX_FED_TEXT;
}

function isText(value: unknown): value is string {
  return typeof value === 'string' && value.length <= MAX_TEXT;
}

function isTarget(value: unknown): value is Target {
  const { kind, grams } = (value ?? {}) as Record<string, unknown>;
  return kind === 'frame' || kind === 'win' || (kind === 'own' && isGrams(grams));
}

function isGrams(value: unknown): boolean {
  return typeof value === 'number' && value > 0 && value <= MAX_NET_GRAMS;
}

function isCaught(value: unknown): value is Caught {
  const { minute, part, grams } = (value ?? {}) as Record<string, unknown>;
  return typeof minute === 'number' && Number.isFinite(minute) && isText(part) && isGrams(grams);
}
