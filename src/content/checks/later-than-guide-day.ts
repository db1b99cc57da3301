import type { Day } from '../../domain/day.ts';
import type { Peg } from '../../domain/peg.ts';
import type { Content } from '../content.ts';
import type { Fault } from '../fault.ts';
import { type FieldPath, faultAt, faultOfFile, type Source } from '../sources/source.ts';
import { shown } from '../sources/text-place.ts';

/** What is recorded lies no later than the day of the data: a later day is a slip, or `guide-day` was forgotten. */
export function checkLaterThanGuideDay(content: Content): readonly Fault[] {
  const { settings, settingsSource } = content;
  if (settingsSource === null) return [];
  const faults: Fault[] = [];
  const look = (day: Day | undefined, source: () => Source, path: FieldPath) => {
    if (day !== undefined && day > settings.guideDay)
      faults.push(faultAt(source(), path, later(day, settings.guideDay)));
  };
  for (const { value, source } of [...content.pegs, ...content.retired]) {
    for (const [day, path] of daysOfPeg(value)) look(day, () => source, path);
  }
  for (const { value, source } of content.notices) look(value.changedOn, () => source, ['changed-on']);
  for (const { value, source } of content.events) look(value.day, source, ['date']);
  for (const { value, source } of content.soundings) look(value.day, source, ['date']);
  for (const { value, source } of content.gauge) look(value.day, source, ['date']);
  for (const { value } of content.rounds) {
    if (value.day > settings.guideDay) faults.push(faultOfFile(value.file, later(value.day, settings.guideDay)));
  }
  return faults;
}

function daysOfPeg(peg: Peg): readonly (readonly [Day | undefined, FieldPath])[] {
  return [
    [peg.since, ['since']],
    [peg.retired?.from, ['retired', 'from']],
    ...(peg.moved ?? []).map(({ on }, index) => [on, ['moved', index, 'on']] as const),
    [peg.clearance?.measuredOn, ['clearance', 'measured-on']],
    [peg.measuredLineDistance?.measuredOn, ['measured-line-distance', 'measured-on']],
    ...peg.hazards.flatMap((hazard, index): (readonly [Day | undefined, FieldPath])[] => [
      [hazard.foundOn, ['hazards', index, 'found-on']],
      [hazard.checkedOn, ['hazards', index, 'checked-on']],
      [hazard.clearedOn, ['hazards', index, 'cleared-on']],
    ]),
  ];
}

function later(day: Day, guideDay: Day) {
  return {
    rule: 'day-later',
    found: shown(day),
    expected: `no day after ${guideDay}, the guide-day of venue.md`,
    mend: 'Correct it, or move guide-day on to the day of the newest data.',
    severity: 'warning',
  } as const;
}
