import type { Peg } from '../../domain/peg.ts';

/** A run of numbers on posts, both ends included: 10 to 18. Letters behind a number go with it: 14a is in it. */
export interface PegRange {
  readonly first: number;
  readonly last: number;
}

/** Reads `10-18`, `12` or `10-` (10 and all above); null where it is none of them. */
export function readRange(written: string): PegRange | null {
  const [, from, dash, to] = /^(\d{1,4})(?:(-|\.\.|–)(\d{1,4})?)?$/.exec(written.trim()) ?? [];
  if (from === undefined) return null;
  const first = Number(from);
  const last = to === undefined ? (dash === undefined ? first : Number.POSITIVE_INFINITY) : Number(to);
  return last < first ? null : { first, last };
}

/** Reads `+1` or `-2`; null where it is no whole number or none at all. */
export function readShift(written: string): number | null {
  const [, sign, digits] = /^([+\-−])?(\d{1,3})$/.exec(written.trim()) ?? [];
  const shift = Number(digits ?? 0) * (sign === undefined || sign === '+' ? 1 : -1);
  return shift === 0 ? null : shift;
}

/** A post's number apart: digits, as many of them as are painted, and letters behind. Null of a name that is no number. */
function partsOf(peg: string): { readonly digits: string; readonly letters: string } | null {
  const [, digits, letters] = /^(\d+)([A-Za-z]?)$/.exec(peg) ?? [];
  return digits === undefined ? null : { digits, letters: letters ?? '' };
}

/** Whether a post's number lies in the run. */
export function isInRange({ peg }: Pick<Peg, 'peg'>, { first, last }: PegRange): boolean {
  const parts = partsOf(peg);
  return parts !== null && Number(parts.digits) >= first && Number(parts.digits) <= last;
}

/** The number after the shift, noughts in front kept (`09` becomes `10`); null where it would be below 1. */
export function shiftedNumber(peg: string, shift: number): string | null {
  const parts = partsOf(peg);
  const number = Number(parts?.digits ?? Number.NaN) + shift;
  if (parts === null || !(number >= 1)) return null;
  return `${String(number).padStart(parts.digits.startsWith('0') ? parts.digits.length : 0, '0')}${parts.letters}`;
}
