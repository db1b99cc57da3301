import { type Dated, overlap } from '../../domain/dated.ts';
import type { Peg } from '../../domain/peg.ts';
import type { Content } from '../content.ts';
import type { Fault } from '../fault.ts';
import { type FieldPath, faultAt, type Placed, type Source } from '../sources/source.ts';
import { shown } from '../sources/text-place.ts';

/** What has days ends no earlier than it begins, and none of it begins after its peg was retired; a water's changes are in order. */
export function checkDatedFacts({ pegs, retired, waters }: Content): readonly Fault[] {
  return [
    ...[...pegs, ...retired].flatMap(factsOfPeg),
    ...waters.flatMap(({ record }) => {
      if (record === null) return [];
      const { value, source } = record;
      return [
        ...inOrder(value.stocked, 'stocked', source),
        ...inOrder(value.netted, 'netted', source),
        ...inOrder(value.levelChanges, 'level-change', source),
      ];
    }),
  ];
}

function factsOfPeg({ value: peg, source }: Placed<Peg>): readonly Fault[] {
  // A platform that is one and no list has no index.
  const isListed = source.writtenAt(['platform', 'kind']) === undefined;
  const platforms = peg.datedPlatforms ?? [];
  const facts: readonly (readonly [Dated, FieldPath])[] = [
    ...(peg.datedFeatures ?? []).map((fact, i) => [fact, ['features', i]] as const),
    ...platforms.map((fact, i) => [fact, isListed ? ['platform', i] : ['platform']] as const),
    ...(peg.datedReach ?? []).map((fact, i) => [fact, ['reach', i]] as const),
  ];
  return [
    ...facts.flatMap(([fact, path]) => [...backwards(fact, path, source), ...afterRetirement(fact, path, peg, source)]),
    ...platforms.flatMap((platform, index) => {
      const other = platforms.findIndex((earlier) => overlap(earlier, platform));
      return other === index || !isListed
        ? []
        : [
            faultAt(source, ['platform', index], {
              rule: 'platform-overlap',
              found: 'a second platform on the same days',
              expected: `days after those of platform[${other}]`,
              mend: 'Give the older one an until, and the newer one a from after it.',
            }),
          ];
    }),
  ];
}

function backwards({ from, until }: Dated, path: FieldPath, source: Source): readonly Fault[] {
  if (from === undefined || until === undefined || from <= until) return [];
  return [
    faultAt(source, [...path, 'until'], {
      rule: 'day-order',
      found: shown(until),
      expected: `a day not before ${from}, its from`,
      mend: 'Correct one of the two days.',
    }),
  ];
}

function afterRetirement({ from }: Dated, path: FieldPath, { retired }: Peg, source: Source): readonly Fault[] {
  if (from === undefined || retired === undefined || from < retired.from) return [];
  return [
    faultAt(source, [...path, 'from'], {
      rule: 'after-retirement',
      found: shown(from),
      expected: `a day before ${retired.from}, when this stand was retired (line ${source.placeOf(['retired']).line})`,
      mend: 'Correct one of the two days, or take the entry out.',
    }),
  ];
}

function inOrder(changes: readonly { readonly on: string }[] = [], field: string, source: Source): readonly Fault[] {
  return changes.flatMap(({ on }, index) => {
    const before = changes[index - 1];
    if (before === undefined || before.on <= on) return [];
    return [
      faultAt(source, [field, index, 'on'], {
        rule: 'day-order',
        found: shown(on),
        expected: `a day not before ${before.on}, that of the entry above it`,
        mend: 'Order them from the oldest to the newest, or correct the day.',
      }),
    ];
  });
}
