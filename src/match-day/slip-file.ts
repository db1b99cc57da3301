import { type Day, isDay } from '../domain/day.ts';
import { sha256Hex } from './even-numbers.ts';
import type { Caught } from './pace.ts';
import { MAX_NET_GRAMS } from './scales.ts';

/** What one angler hands to the club of a day on a peg. It has no place for a name or for the phone it comes from. */
export interface Slip {
  /** Made on the phone for one day on one peg, so that the slip corrected is told from another slip; older slips have none. */
  readonly id?: string;
  readonly venue: string;
  readonly water: string;
  /** The number on the post. */
  readonly peg: string;
  /** The day of the all in. */
  readonly day: Day;
  /** The club's match; null where the peg was chosen. */
  readonly match: string | null;
  readonly hours: number;
  readonly caught: readonly Caught[];
  /** In the angler's words; empty where nothing was said. */
  readonly spot: string;
  readonly method: string;
  readonly bait: string;
  readonly lines: number | null;
  readonly waterDegreesC: number | null;
}

const SLIP_FILE_FORMAT = 'peg-atlas-slip-1';
/** What a phone makes of eight random bytes, and the log's column takes. */
const SLIP_ID = /^[a-z0-9]{6,20}$/;
const MAX_CHARACTERS = 60_000;
const MAX_CAUGHT = 500;
/** Words of a slip are short: a spot, a method, a bait. */
export const MAX_SLIP_TEXT = 40;
export const MAX_LINES = 20;
/** Water that is fished has between these (our own choice). */
export const WATER_DEGREES = [-1, 35] as const;

/** What may be wrong with a file, in words a person can act on. */
export type SlipRead = { readonly ok: true; readonly slip: Slip } | { readonly ok: false; readonly why: string };

/** Whether a text calls itself a slip. */
export function isSlipFile(text: string): boolean {
  return text.slice(0, 200).includes(`"${SLIP_FILE_FORMAT}"`);
}

/** The file's text, with a digest by which a slip of an editor is found out. */
export async function slipFileText(slip: Slip): Promise<string> {
  return JSON.stringify({
    format: SLIP_FILE_FORMAT,
    check: await sha256Hex(JSON.stringify(inOrder(slip))),
    ...inOrder(slip),
  });
}

/** Reads a slip that somebody handed over: nothing in it is trusted, and what it has besides is passed over. */
export async function readSlipFile(text: string): Promise<SlipRead> {
  if (text.length > MAX_CHARACTERS) return { ok: false, why: 'It is larger than any slip: this is some other file.' };
  let read: unknown;
  try {
    read = JSON.parse(text.replace(/^\ufeff/, ''));
  } catch {
    return { ok: false, why: 'It was cut off or changed on the way: ask for it to be sent again.' };
  }
  const { format, check, ...slip } = (read ?? {}) as Record<string, unknown>;
  if (format !== SLIP_FILE_FORMAT) return { ok: false, why: 'It is no slip of an angler.' };
  if (!isSlip(slip)) {
    return { ok: false, why: 'Something in it was changed so that it cannot be read: ask for it to be sent again.' };
  }
  if (check !== (await sha256Hex(JSON.stringify(inOrder(slip))))) {
    return { ok: false, why: 'It was changed since the phone handed it over: ask for it to be sent again.' };
  }
  return { ok: true, slip: inOrder(slip) };
}

/** What is caught of each part, and all together. */
export function slipGrams({ caught }: Pick<Slip, 'caught'>): ReadonlyMap<string, number> {
  const parts = new Map<string, number>();
  for (const { part, grams } of caught) parts.set(part, (parts.get(part) ?? 0) + grams);
  return parts;
}

function inOrder(slip: Slip): Slip {
  const { id, venue, water, peg, day, match, hours, caught, spot, method, bait, lines, waterDegreesC } = slip;
  const rows = caught.map(({ minute, part, grams }) => ({ minute, part, grams }));
  const told = { venue, water, peg, day, match, hours, caught: rows, spot, method, bait, lines, waterDegreesC };
  return id === undefined ? told : { id, ...told };
}

function isSlip(value: Record<string, unknown>): value is Record<string, unknown> & Slip {
  const { id, venue, water, peg, day, match, hours, caught, spot, method, bait, lines, waterDegreesC } = value;
  return (
    (id === undefined || (typeof id === 'string' && SLIP_ID.test(id))) &&
    isText(venue, 200) &&
    isText(water, 80) &&
    isText(peg, 20) &&
    typeof day === 'string' &&
    isDay(day) &&
    (match === null || isText(match, 120)) &&
    isWithin(hours, 0.5, 24) &&
    Array.isArray(caught) &&
    caught.length <= MAX_CAUGHT &&
    caught.every(isCaught) &&
    [spot, method, bait].every((text) => isText(text, MAX_SLIP_TEXT)) &&
    (lines === null || (Number.isInteger(lines) && isWithin(lines, 0, MAX_LINES))) &&
    (waterDegreesC === null || isWithin(waterDegreesC, ...WATER_DEGREES))
  );
}

function isText(value: unknown, most: number): value is string {
  return typeof value === 'string' && value.length <= most;
}

function isWithin(value: unknown, least: number, most: number): value is number {
  return typeof value === 'number' && value >= least && value <= most;
}

function isCaught(value: unknown): value is Caught {
  const { minute, part, grams } = (value ?? {}) as Record<string, unknown>;
  return isWithin(minute, -720, 2880) && isText(part, 40) && isWithin(grams, 1, MAX_NET_GRAMS);
}
