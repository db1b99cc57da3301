import { pegKey } from '../../domain/peg.ts';
import type { Content } from '../content.ts';
import type { Fault } from '../fault.ts';
import { unknownPegName } from './session-names.ts';
import type { UnknownName } from './unknown-name.ts';

/** A sounding taken from a peg names one of its water. */
export function checkSoundingPegs({ soundings, known }: Content): readonly Fault[] {
  const tellers = new Map<string, UnknownName>();
  return soundings.flatMap(({ value: { water, fromPeg }, source }) => {
    if (fromPeg === undefined || known.pegs.has(pegKey(water, fromPeg.peg))) return [];
    const unknownPeg = tellers.get(water) ?? unknownPegName(water, known.pegs);
    tellers.set(water, unknownPeg);
    return [unknownPeg(source(), ['peg'], fromPeg.peg)];
  });
}
