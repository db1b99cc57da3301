import type { Dated } from './dated.ts';
import { holdsOn } from './dated.ts';
import { addDays, type Day } from './day.ts';
import { type Peg, type PegKey, pegKey } from './peg.ts';
import type { LatLng } from './place.ts';

/**
 * A peg record is a stand: a place on the bank that keeps its `id` while the number on its post changes. Logs, soundings,
 * rounds and notices name the number of their own day (number-book.ts finds the stand).
 */
export type StandId = string;

/** A number that a stand's post carried once. */
export interface FormerNumber {
  readonly peg: string;
  /** Its first day; the day after the number before it, where left out. */
  readonly from?: Day;
  /** Its last day. */
  readonly until: Day;
}

/** A day on which a platform was set elsewhere on the bank. */
export interface Move {
  /** The first day at its new place. */
  readonly on: Day;
  readonly metres: number;
  /** What it fishes into is another piece of water, so that what was caught before says nothing of the place itself. */
  readonly newGround: boolean;
  /** Where it stood before; what was plumbed from it until then is placed from here. */
  readonly wasAt?: LatLng;
  readonly wasFacingDegrees?: number;
}

/** A stand that is no longer fished. Its log still counts for features and anglers. */
export interface Retirement {
  /** The first day on which nobody could fish it. */
  readonly from: Day;
  readonly why?: string;
}

/** Days on which a post carried a number. */
export interface NumberSpell extends Dated {
  readonly peg: string;
}

const ALPHABET = '0123456789abcdefghjkmnpqrstvwxyz';
const ID_CHARACTERS = 8;

/**
 * The id of a stand: its record's, or where that gives none one made from its water and number, always the same; of a stand
 * younger than the venue from the day it began as well, since another may have carried that number before. It is a 64-bit
 * FNV-1a hash (Fowler, Noll and Vo, 1991) in Crockford's base 32, so that nobody reads a number into it.
 */
export function standId({ id, water, peg, since }: Pick<Peg, 'id' | 'water' | 'peg' | 'since'>): StandId {
  if (id !== undefined) return id;
  const name = since === undefined ? pegKey(water, peg) : `${pegKey(water, peg)}@${since}`;
  let hash = 0xcbf29ce484222325n;
  for (const character of name) {
    hash = ((hash ^ BigInt(character.codePointAt(0) ?? 0)) * 0x100000001b3n) & 0xffffffffffffffffn;
  }
  let text = '';
  for (let i = 0; i < ID_CHARACTERS; i++) {
    text += ALPHABET[Number(hash & 31n)];
    hash >>= 5n;
  }
  return `s-${text}`;
}

/**
 * What a phone keeps its own notes of a place under, such as a depth that somebody plumbed: the water and the number the stand
 * had first, so that they stay with it when another takes that number; the day it began or was last moved where that matters.
 */
export function placeKey({ water, peg, was, since, moved }: Pick<Peg, 'water' | 'peg' | 'was' | 'since' | 'moved'>) {
  const days = [since, moved?.at(-1)?.on].filter((day) => day !== undefined);
  return [pegKey(water, was?.[0]?.peg ?? peg), ...days].join('@');
}

/**
 * The numbers of a stand over time, oldest first. The present one runs from the day after the last former one, or from the
 * day the stand was made, and a retired stand has none.
 */
export function numbersOf(peg: Peg): readonly NumberSpell[] {
  const spells: NumberSpell[] = [];
  let from = peg.since;
  for (const { peg: number, from: own, until } of peg.was ?? []) {
    const first = own ?? from;
    spells.push({ peg: number, ...(first === undefined ? {} : { from: first }), until });
    from = addDays(until, 1);
  }
  if (peg.retired === undefined) spells.push({ peg: peg.peg, ...(from === undefined ? {} : { from }) });
  return spells;
}

/** The feature ids of a stand on a day. */
export function featuresOn(peg: Pick<Peg, 'features' | 'datedFeatures'>, day: Day): readonly string[] {
  return peg.datedFeatures?.filter((feature) => holdsOn(feature, day)).map(({ id }) => id) ?? peg.features;
}

/**
 * The name of what a stand fished into on a day: the peg's key for what it fishes into today, another name before each move
 * to new ground. What differs here must not share a peg effect.
 */
export function groundOn(peg: Pick<Peg, 'water' | 'peg' | 'moved'>, day: Day): PegKey {
  const later = (peg.moved ?? []).filter(({ on, newGround }) => newGround && day < on).length;
  const key = pegKey(peg.water, peg.peg);
  return later === 0 ? key : `${key}~${later}`;
}
