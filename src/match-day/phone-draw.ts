import type { PegKey } from '../domain/peg.ts';
import { numbersFrom, sha256Hex } from './even-numbers.ts';
import { shuffled } from './shuffle.ts';

/**
 * A draw by the phone that nobody can have arranged. Before it, the phone shows the digest of a secret seed with the pegs and
 * the number of entries: that holds the organiser to them. Then somebody else says a word or rolls dice in public: the salt.
 * Seed and salt together make the order, so neither side alone can choose it; when the seed is shown afterwards, anybody can
 * work out the digest and the draw again.
 */
export interface DrawPromise {
  readonly match: string;
  /** The pegs in the bag, in the order of the plan. */
  readonly pegs: readonly PegKey[];
  /** 64 hexadecimal digits, secret until the draw is done. */
  readonly seed: string;
}

/** The text whose SHA-256 is shown before the draw. */
export function promiseText({ match, pegs, seed }: DrawPromise): string {
  return ['Peg Atlas draw', match, `${pegs.length} pegs`, pegs.join(' '), seed].join('\n');
}

/** The digest that is shown, and read out, before the salt is known. */
export function promiseDigest(promise: DrawPromise): Promise<string> {
  return sha256Hex(promiseText(promise));
}

/** The pegs in the order of the entries: the first entry on the list has the first of them. */
export function drawnPegs(promise: DrawPromise, salt: string): Promise<PegKey[]> {
  return shuffled(promise.pegs, numbersFrom(`${promiseText(promise)}\n${saltText(salt)}`));
}

/** A salt as it counts: what was said aloud, whatever its capitals and spaces. */
export function saltText(salt: string): string {
  return salt.normalize('NFKC').trim().toLowerCase().replace(/\s+/g, ' ');
}
