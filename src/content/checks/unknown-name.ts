import { didYouMean } from '../did-you-mean.ts';
import type { Fault } from '../fault.ts';
import { type FieldPath, faultAt, type Source } from '../sources/source.ts';
import { shown } from '../sources/text-place.ts';

/** Where so many different names are unknown, no slip of the pen is the reason, and looking for one takes minutes. */
const MAX_ADVISED = 200;

/** Tells that a field names something the folder does not hold. */
export type UnknownName = (source: Source, path: FieldPath, written: string) => Fault;

/**
 * A teller of unknown names of one kind.
 * @param rule such as `peg-unknown`
 * @param expected such as "one of the 38 pegs of mill-pond"
 * @param otherwise what to do where nothing known is near
 */
export function unknownName(rule: string, known: Iterable<string>, expected: string, otherwise: string): UnknownName {
  const candidates = [...known];
  // A log may name the same wrong peg a thousand times.
  const advice = new Map<string, string>();
  return (source, path, written) => {
    const mend =
      advice.get(written) ?? (advice.size < MAX_ADVISED ? didYouMean(written, candidates, otherwise) : otherwise);
    advice.set(written, mend);
    return faultAt(source, path, { rule, found: shown(written), expected, mend });
  };
}
