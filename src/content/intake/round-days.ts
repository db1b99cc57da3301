import type { Day } from '../../domain/day.ts';
import type { RoundFile } from '../round-file/round-file.ts';

/** Every day a round speaks of having seen something: its own first. */
function daysOf({ day, pegs, places = [], notices = [], gauges }: RoundFile): readonly Day[] {
  const days = [
    day,
    ...pegs.flatMap((finding) => [
      finding.day,
      ...Object.values(finding.days ?? {}),
      ...finding.hazards.map((hazard) => hazard.day),
    ]),
    ...places.flatMap((finding) => [finding.day, ...finding.hazards.map((hazard) => hazard.day)]),
    ...notices.map((notice) => notice.day),
    ...gauges.map((gauge) => gauge.day),
  ];
  return days.filter((one) => one !== undefined);
}

/** The last day of a round. */
export function lastDayOf(round: RoundFile): Day {
  return [...daysOf(round)].sort().at(-1) ?? round.day;
}
