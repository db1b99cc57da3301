import { hazardKind } from '../../domain/risk.ts';
import type { Content } from '../content.ts';
import type { Fault } from '../fault.ts';
import { faultAt, type Source } from '../sources/source.ts';
import { shown } from '../sources/text-place.ts';
import { beforeFound } from './hazard-dates.ts';

/**
 * A hazard of a water names a path or a place that is on its map. A wrong name is a warning: the hazard is shown as one of
 * the whole water rather than lost.
 */
export function checkPlaceHazards({ waters }: Content): readonly Fault[] {
  return waters.flatMap(({ record, map }) => {
    if (record === null || map === null) return [];
    const ids = new Set([...map.map.paths, ...map.map.places].map(({ id }) => id));
    return (record.value.hazards ?? []).flatMap((hazard, index) => [
      ...beforeFound(record.source, index, hazard),
      ...(hazard.mappedAs === undefined || ids.has(hazard.mappedAs)
        ? []
        : [unknownPlace(record.source, index, hazard.mappedAs)]),
    ]);
  });
}

function unknownPlace(source: Source, index: number, mappedAs: string): Fault {
  return {
    ...faultAt(source, ['hazards', index, 'mapped-as'], {
      rule: 'hazard-place',
      found: shown(mappedAs),
      expected: 'the id of a path or place on the map of this water',
      mend: 'Give the id of the feature on the map; leave the field out for the whole water.',
    }),
    severity: 'warning',
  };
}

/** A hard rule is cleared by somebody's decision, and the record says whose and why. */
export function checkClearedRules({ pegs, waters }: Content): readonly Fault[] {
  const records = [
    ...pegs.map(({ value, source }) => ({ hazards: value.hazards, source })),
    ...waters.flatMap(({ record }) =>
      record === null ? [] : [{ hazards: record.value.hazards ?? [], source: record.source }],
    ),
  ];
  return records.flatMap(({ hazards, source }) =>
    hazards.flatMap(({ kind, clearedOn, clearedBy, clearedWhy }, index): readonly Fault[] => {
      if (clearedOn === undefined || !hazardKind(kind).hardRule) return [];
      if (clearedBy !== undefined && clearedWhy !== undefined) return [];
      return [
        {
          ...faultAt(source, ['hazards', index, 'cleared-on'], {
            rule: 'hard-rule-cleared',
            found: `a hard rule (${kind}) cleared without a word on who decided it, or why`,
            expected: 'cleared-by, a role, and cleared-why',
            mend: 'Write both beside it: cleared-by: Bailiff and cleared-why: what was seen.',
          }),
          severity: 'warning',
        },
      ];
    }),
  );
}
