import type { Hazard } from '../../domain/hazard.ts';
import type { Content } from '../content.ts';
import type { Fault } from '../fault.ts';
import { faultAt, type Source } from '../sources/source.ts';
import { shown } from '../sources/text-place.ts';
import { unknownName } from './unknown-name.ts';

/** A hazard is checked and cleared no earlier than it was found, by a round that exists. */
export function checkHazardDates({ pegs, known }: Content): readonly Fault[] {
  const unknownRound = unknownName(
    'round-unknown',
    known.rounds,
    'the reference of a file in rounds/',
    'Correct it, or take the line out.',
  );
  return pegs.flatMap(({ value: peg, source }) =>
    peg.hazards.flatMap((hazard, index) => [
      ...beforeFound(source, index, hazard),
      ...(hazard.round === undefined || known.rounds.has(hazard.round)
        ? []
        : [unknownRound(source, ['hazards', index, 'round'], hazard.round)]),
    ]),
  );
}

/** The days of a hazard that lie before it was found. */
export function beforeFound(source: Source, index: number, hazard: Hazard): readonly Fault[] {
  const days = { 'checked-on': hazard.checkedOn, 'cleared-on': hazard.clearedOn };
  return Object.entries(days).flatMap(([field, day]) => {
    if (day === undefined || day >= hazard.foundOn) return [];
    return [
      faultAt(source, ['hazards', index, field], {
        rule: 'hazard-days',
        found: shown(day),
        expected: `no day before ${hazard.foundOn}, when the hazard was found`,
        mend: 'Correct one of the two days.',
      }),
    ];
  });
}
