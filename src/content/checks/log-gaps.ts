import { daysBetween } from '../../domain/day.ts';
import type { Content } from '../content.ts';
import type { Fault } from '../fault.ts';
import { faultAt } from '../sources/source.ts';

/** A log this short has no usual distance between its days. */
const MIN_EVENTS = 20;
/** Longer than a close season of three months, which is common practice (no source). */
const MIN_DAYS = 120;
/** And this many times the usual distance between two days of the log (our own figure). */
const TIMES_USUAL = 6;

/** Months without an event, in a log that has one every few days: a file may be missing. */
export function checkLogGaps({ events }: Content): readonly Fault[] {
  if (events.length < MIN_EVENTS) return [];
  const sorted = [...events].sort((a, b) => (a.value.day < b.value.day ? -1 : a.value.day > b.value.day ? 1 : 0));
  const gaps = sorted.slice(1).map(({ value }, i) => daysBetween(sorted[i]!.value.day, value.day));
  const usual = [...gaps].sort((a, b) => a - b)[Math.floor(gaps.length / 2)]!;
  const most = Math.max(MIN_DAYS, TIMES_USUAL * usual);
  return gaps.flatMap((days, i) => {
    if (days <= most) return [];
    const before = sorted[i]!;
    return [
      faultAt(sorted[i + 1]!.source(), ['date'], {
        rule: 'log-gap',
        found: `${days} days without an event before ${sorted[i + 1]!.value.day}`,
        expected: `an event every ${Math.max(1, usual)} days or so, as before ${before.value.day} (${before.source().file}, line ${before.line})`,
        mend: 'Add the sheets that are missing; where nothing was fished, leave it as it is.',
        severity: 'warning',
      }),
    ];
  });
}
