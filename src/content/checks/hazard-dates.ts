import type { Hazard } from '../../domain/hazard.ts';
import type { Content } from '../content.ts';
import type { Fault } from '../fault.ts';
import { faultAt, type Source } from '../sources/source.ts';
import { shown } from '../sources/text-place.ts';
import { unknownName } from './unknown-name.ts';

/** A hazard is checked and cleared no earlier than it was found, by a round that exists. */
export function checkHazardHistory({ pegs, known }: Content): readonly Fault[] {
  const unknownRound = unknownName(
    'round-unknown',
    known.rounds,
    'the reference of a file in rounds/',
    'Correct it, or take the line out.',
  );
  return pegs.flatMap(({ value: peg, source }) =>
    peg.hazards.flatMap((hazard, index) => [
      ...beforeFound(source, index, 'checked-on', hazard.checkedOn, hazard),
      ...beforeFound(source, index, 'cleared-on', hazard.clearedOn, hazard),
      ...(hazard.round === undefined || known.rounds.has(hazard.round)
        ? []
        : [unknownRound(source, ['hazards', index, 'round'], hazard.round)]),
    ]),
  );
}

/** The fault of a day before the hazard was found. */
export function beforeFound(
  source: Source,
  index: number,
  field: string,
  day: string | undefined,
  { foundOn }: Hazard,
): readonly Fault[] {
  if (day === undefined || day >= foundOn) return [];
  return [
    faultAt(source, ['hazards', index, field], {
      rule: 'hazard-days',
      found: shown(day),
      expected: `no day before ${foundOn}, when the hazard was found`,
      mend: 'Correct one of the two days.',
    }),
  ];
}
