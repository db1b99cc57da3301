import { holdsOn } from '../../domain/dated.ts';
import type { Day } from '../../domain/day.ts';
import { type Peg, pegKey } from '../../domain/peg.ts';
import type { Content } from '../content.ts';
import type { Fault } from '../fault.ts';
import { faultAt, type Placed } from '../sources/source.ts';
import { shown } from '../sources/text-place.ts';

/** A session on a peg that was closed that day, by its record or by a notice: the log or the closing has a wrong day. */
export function checkFishedWhileClosed({ sessions, events, pegs, notices }: Content): readonly Fault[] {
  const days = new Map(events.map(({ value }) => [value.id, value.day]));
  const pegOf = new Map(pegs.map((peg) => [pegKey(peg.value.water, peg.value.peg), peg]));
  const closures = notices.filter(({ value }) => value.kind === 'closure');
  return sessions.flatMap(({ value: { event, water, peg, painted, status }, source }) => {
    const day = days.get(event);
    if (day === undefined || status === 'absent') return [];
    const key = pegKey(water, peg);
    const closing =
      closedByRecord(pegOf.get(key), day) ??
      closures.find(
        ({ value }) =>
          holdsOn(value, day) && (value.pegs.length > 0 ? value.pegs.includes(key) : value.waters.includes(water)),
      )?.source.file;
    if (closing === undefined) return [];
    return [
      faultAt(source(), ['peg'], {
        rule: 'fished-while-closed',
        found: `${shown(painted ?? peg)} fished on ${day}`,
        expected: `no session on a peg that was closed that day: see ${closing}`,
        mend: 'Correct the peg or the day here, or the days of the closing there. The session counts as it stands.',
        severity: 'warning',
      }),
    ];
  });
}

/** The place of the record's line that says it was closed on a day. */
function closedByRecord(peg: Placed<Peg> | undefined, day: Day): string | undefined {
  if (peg === undefined) return undefined;
  const { status, statusSince, file } = peg.value;
  if (status !== 'closed' || statusSince === undefined || day < statusSince) return undefined;
  return `${file}, line ${peg.source.placeOf(['status-since']).line}`;
}
