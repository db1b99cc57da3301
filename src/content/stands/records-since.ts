import type { Day } from '../../domain/day.ts';
import { type Peg, type PegKey, pegKey } from '../../domain/peg.ts';
import type { Content } from '../content.ts';
import type { Fault } from '../fault.ts';
import { faultAt, type Placed, type Source } from '../sources/source.ts';

/** A record that names a stand by the number of its day. */
interface Naming {
  readonly key: PegKey;
  readonly day: Day;
  readonly what: string;
  readonly source: () => Source;
  readonly field: readonly PropertyKey[];
}

/**
 * What was written of stands on or after the day on which their numbers are to change: all of it names the numbers from
 * before, and would be of another stand afterwards. Of each stand and kind of record the latest is told, with how many there are.
 */
export function recordsSince(content: Content, stands: readonly Placed<Peg>[], from: Day): readonly Fault[] {
  const byKey = new Map(stands.map((stand) => [pegKey(stand.value.water, stand.value.peg), stand]));
  const late = namings(content).filter(({ key, day }) => byKey.has(key) && day >= from);
  return [...Map.groupBy(late, ({ key, what }) => `${key} ${what}`).values()].map((group) => {
    const latest = group.reduce((a, b) => (b.day > a.day ? b : a));
    const { value: peg, source } = byKey.get(latest.key)!;
    const more = group.length === 1 ? '' : ` (and ${group.length - 1} more from ${from} on)`;
    return faultAt(latest.source(), latest.field, {
      rule: 'change-day-log',
      found: `${latest.what} of peg ${peg.peg} on ${latest.day}${more}`,
      expected: `nothing of it on or after ${from}, from which ${source.file} is to say otherwise`,
      mend: 'Choose a later --from; or, where this was written with the new numbers already, take it out and put it back after the change.',
    });
  });
}

function namings(content: Content): readonly Naming[] {
  const days = new Map(content.events.map(({ value }) => [value.id, value.day]));
  return [
    ...content.sessions.flatMap(({ value, source }): Naming[] => {
      const day = days.get(value.event);
      return day === undefined
        ? []
        : [{ key: pegKey(value.water, value.peg), day, what: 'a session', source, field: ['peg'] }];
    }),
    ...content.soundings.flatMap(({ value, source }): Naming[] =>
      value.fromPeg === undefined
        ? []
        : [
            {
              key: pegKey(value.water, value.fromPeg.peg),
              day: value.day,
              what: 'a sounding',
              source,
              field: ['peg'],
            },
          ],
    ),
    ...content.rounds.flatMap(({ value: round, rows }) =>
      rows.flatMap(({ value, source }): Naming[] =>
        value.peg === undefined
          ? []
          : [
              {
                key: pegKey(value.water, value.peg),
                day: value.day ?? round.day,
                what: 'a row of a bank round',
                source,
                field: ['peg'],
              },
            ],
      ),
    ),
    ...content.matches.flatMap(({ value: { day, plan, leaveOut, kept }, source }) =>
      [...new Set([...plan.flatMap(({ pegs }) => pegs), ...leaveOut, ...kept])].map(
        (key): Naming => ({ key, day, what: 'a match', source: () => source, field: ['date'] }),
      ),
    ),
    ...content.notices.flatMap(({ value, source }) =>
      value.pegs.map(
        (key): Naming => ({ key, day: value.from, what: 'a notice', source: () => source, field: ['pegs'] }),
      ),
    ),
  ];
}
