import { type PegKey, pegKey } from '../domain/peg.ts';
import { formatDistance } from '../domain/place-words.ts';
import { type BankRing, bankRings } from '../ground/bank-order.ts';
import { type Atlas, surveyOfPeg } from './atlas.ts';
import { bankPiece } from './drawing/bank-piece.ts';
import type { StripPeg } from './drawing/strip-peg.ts';
import { deepestOf, stripPegs } from './unrolled-bank.ts';

/** Neighbours drawn to either side. */
const EACH_WAY = 2;

/**
 * Makes the heads of one water's sheets, each its peg's piece of the bank unrolled: walk the bank once, then cut each piece.
 * @throws RangeError for a peg that is not of this water
 */
export function bankPieces(atlas: Atlas, waterId: string): (key: PegKey) => string {
  const keys = (atlas.pegsByWater.get(waterId) ?? []).map(({ peg }) => pegKey(waterId, peg));
  const rings = bankRings(keys, (key) => surveyOfPeg(atlas, key).neighbours);
  const strips = rings.map((ring) => ({ ring, pegs: stripPegs(atlas, ring) }));
  const deepestMetres = deepestOf(strips.flatMap(({ pegs }) => pegs));
  const { units } = atlas.venue.settings;
  return (key) => {
    const strip = strips.find(({ ring }) => ring.pegs.includes(key));
    if (strip === undefined) throw new RangeError(`bankPieces: ${key} is no peg of ${waterId}`);
    const { places, here } = placesAbout(strip.ring, strip.ring.pegs.indexOf(key));
    return bankPiece({
      pegs: places.map((place, i) => pieceOf(strip, place, i === places.length - 1)),
      here,
      deepestMetres,
      gapWords: (metres) => formatDistance(metres, units),
    });
  };
}

/** A peg of a piece: the last has no gap, that of a ring's last peg leads on to its first. */
function pieceOf(strip: { ring: BankRing; pegs: readonly StripPeg[] }, place: number, isLast: boolean): StripPeg {
  return { ...strip.pegs[place]!, gapMetres: isLast ? null : strip.ring.gapMetres[place]! };
}

/** The places on a ring about one of them, each once, as far as the bank goes on. */
function placesAbout({ pegs, gapMetres }: BankRing, middle: number): { places: readonly number[]; here: number } {
  const { length } = pegs;
  const goesOn = (place: number) => Number.isFinite(gapMetres[place]!);
  const [left, right]: [number[], number[]] = [[], []];
  for (let steps = 1; steps <= EACH_WAY; steps++) {
    const [before, after] = [(middle - steps + length) % length, (middle + steps) % length];
    const free = () => left.length + right.length + 1 < length;
    if (free() && right.length === steps - 1 && goesOn((after - 1 + length) % length)) right.push(after);
    if (free() && left.length === steps - 1 && goesOn(before)) left.unshift(before);
  }
  return { places: [...left, middle, ...right], here: left.length };
}
