import type { Content } from '../content.ts';
import type { Fault } from '../fault.ts';
import { faultAt } from '../sources/source.ts';

/** A bag part with a weight from before the day that `venue.md` says it was first weighed apart. */
export function checkPartsBeforeSince({ sessions, events, settings, settingsSource }: Content): readonly Fault[] {
  if (settingsSource === null) return [];
  const dated = settings.bagParts.flatMap(({ id, since }, index) =>
    since === undefined ? [] : [{ id, since, index }],
  );
  if (dated.length === 0) return [];
  const days = new Map(events.map(({ value }) => [value.id, value.day]));
  return sessions.flatMap(({ value, source }) =>
    dated.flatMap(({ id, since, index }) => {
      const day = days.get(value.event);
      if (day === undefined || day >= since || value.parts[id] === undefined) return [];
      const { line } = settingsSource.placeOf(['bag-parts', index, 'since']);
      return [
        faultAt(source(), [value.parts[id].weightGrams === undefined ? `${id}_count` : `${id}_weight`], {
          rule: 'part-before-since',
          found: `${id} of ${day}`,
          expected: `nothing before ${since}, from when it is weighed apart (venue.md, line ${line})`,
          mend: 'Empty the cell, or correct since in venue.md.',
          severity: 'warning',
        }),
      ];
    }),
  );
}
