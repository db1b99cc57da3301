import { pegKey } from '../../domain/peg.ts';
import type { Content } from '../content.ts';
import type { Fault } from '../fault.ts';
import { faultAt } from '../sources/source.ts';
import { shown } from '../sources/text-place.ts';

/** Each peg of a water has one record, and no two differ in capitals alone: their pages would share one address. */
export function checkPegNames({ pegs }: Content): readonly Fault[] {
  const first = new Map<string, string>();
  return pegs.flatMap(({ value: { water, peg, file }, source }) => {
    const key = pegKey(water, peg).toLowerCase();
    const other = first.get(key);
    if (other === undefined) {
      first.set(key, file);
      return [];
    }
    return [
      faultAt(source, ['peg'], {
        rule: 'peg-duplicate',
        found: `the peg ${shown(peg)} a second time`,
        expected: `each peg of ${water} once; the first is in ${other}`,
        mend: 'Delete one of the two records, or give this one its own name.',
      }),
    ];
  });
}
