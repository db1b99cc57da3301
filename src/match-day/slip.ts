import { type Day, isDay } from '../domain/day.ts';
import { type Fed, MAX_FED_TEXT } from '../domain/fed.ts';
import { isPlumbable } from '../domain/plumb-doubt.ts';
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
  readonly fed: readonly Fed[];
  /** What the angler plumbed that day. */
  readonly depths: readonly PlumbedLine[];
  /** In the angler's words; empty where nothing was said. */
  readonly spot: string;
  readonly method: string;
  readonly bait: string;
  readonly lines: number | null;
  readonly waterDegreesC: number | null;
}

/** A depth the angler plumbed straight out from the peg. */
export interface PlumbedLine {
  readonly lineMetres: number;
  readonly depthMetres: number;
}

/** What a phone makes of eight random bytes, and the log's column takes. */
const SLIP_ID = /^[a-z0-9]{6,20}$/;
export const MAX_CAUGHT = 500;
export const MAX_FED = 60;
const MAX_DEPTHS = 20;
const FARTHEST_LINE_METRES = 200;
/** Words of a slip are short: a spot, a method, a bait. */
export const MAX_SLIP_TEXT = 40;
export const MAX_LINES = 20;
/** Water that is fished has between these (our own choice). */
export const WATER_DEGREES = [-1, 35] as const;

/** What is caught of each part, and all together. */
export function slipGrams({ caught }: Pick<Slip, 'caught'>): ReadonlyMap<string, number> {
  const parts = new Map<string, number>();
  for (const { part, grams } of caught) parts.set(part, (parts.get(part) ?? 0) + grams);
  return parts;
}

/** What a slip has, and nothing that somebody put beside it. */
export function known(slip: Slip): Slip {
  const { id, venue, water, peg, day, match, hours, spot, method, bait, lines, waterDegreesC } = slip;
  const caught = slip.caught.map(({ minute, part, grams }) => ({ minute, part, grams }));
  const fed = slip.fed.map(({ minute, what }) => ({ minute, what }));
  const depths = slip.depths.map(({ lineMetres, depthMetres }) => ({ lineMetres, depthMetres }));
  const told = { venue, water, peg, day, match, hours, caught, fed, depths, spot, method, bait, lines, waterDegreesC };
  return id === undefined ? told : { id, ...told };
}

/** Whether something read has all that a slip has, each within what a day on the bank can bring. */
export function isSlip(value: Record<string, unknown>): value is Record<string, unknown> & Slip {
  const { id, venue, water, peg, day, match, hours, spot, method, bait, lines, waterDegreesC } = value;
  return (
    (id === undefined || (typeof id === 'string' && SLIP_ID.test(id))) &&
    isText(venue, 200) &&
    isText(water, 80) &&
    isText(peg, 20) &&
    typeof day === 'string' &&
    isDay(day) &&
    (match === null || isText(match, 120)) &&
    isWithin(hours, 0.5, 24) &&
    isListOf(value.caught, MAX_CAUGHT, isCaught) &&
    isListOf(value.fed, MAX_FED, isFed) &&
    isListOf(value.depths, MAX_DEPTHS, isPlumbed) &&
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

function isListOf(value: unknown, most: number, is: (each: unknown) => boolean): boolean {
  return Array.isArray(value) && value.length <= most && value.every(is);
}

function isFed(value: unknown): value is Fed {
  const { minute, what } = (value ?? {}) as Record<string, unknown>;
  return isMinute(minute) && isText(what, MAX_FED_TEXT) && what.trim() !== '';
}

function isPlumbed(value: unknown): value is PlumbedLine {
  const { lineMetres, depthMetres } = (value ?? {}) as Record<string, unknown>;
  return isWithin(lineMetres, 0, FARTHEST_LINE_METRES) && typeof depthMetres === 'number' && isPlumbable(depthMetres);
}

/** From half a day before the all in to two days after it: a clock may be wrong. */
function isMinute(value: unknown): value is number {
  return isWithin(value, -720, 2880);
}

function isCaught(value: unknown): value is Caught {
  const { minute, part, grams } = (value ?? {}) as Record<string, unknown>;
  return isMinute(minute) && isText(part, 40) && isWithin(grams, 1, MAX_NET_GRAMS);
}
