import { type Hazard, isCurrent } from '../../domain/hazard.ts';
import type { Content } from '../content.ts';
import type { Fault } from '../fault.ts';
import { faultAt, type Source } from '../sources/source.ts';
import { shown } from '../sources/text-place.ts';

/** One hazard has one entry while it lasts: of two alike, a check of one leaves the other overdue for good. */
export function checkHazardTwice({ pegs, waters }: Content): readonly Fault[] {
  return [
    ...pegs.flatMap(({ value, source }) => twice(value.hazards, source)),
    ...waters.flatMap(({ record }) => (record === null ? [] : twice(record.value.hazards ?? [], record.source))),
  ];
}

function twice(hazards: readonly (Hazard & { readonly mappedAs?: string })[], source: Source): readonly Fault[] {
  const first = new Map<string, number>();
  return hazards.flatMap((hazard, index) => {
    if (!isCurrent(hazard)) return [];
    const { kind, place, mappedAs, line } = hazard;
    const key = JSON.stringify([kind, place.trim().toLowerCase(), mappedAs, line]);
    const earlier = first.get(key);
    if (earlier === undefined) {
      first.set(key, index);
      return [];
    }
    return [
      faultAt(source, ['hazards', index, 'place'], {
        rule: 'hazard-twice',
        found: `${kind} at ${shown(place)} a second time`,
        expected: `each hazard once while it lasts; the first is on line ${source.placeOf(['hazards', earlier]).line}`,
        mend: 'Keep the one with the later checked-on and take the other out; if they are two, say where each of them is.',
        severity: 'warning',
      }),
    ];
  });
}
