import { areFarApart, gramsByHour, hoursBegun, hoursKey, WHOLE_BAG } from '../../domain/hour-weight.ts';
import type { Session } from '../../domain/session.ts';
import { formatWeight } from '../../domain/weight.ts';
import type { Content } from '../content.ts';
import type { Fault } from '../fault.ts';
import { faultAt } from '../sources/source.ts';
import { shown } from '../sources/text-place.ts';
import { unknownEventName } from './session-names.ts';
import { unknownName } from './unknown-name.ts';

/** Hours belong to a session of the log, lie within its event, are written once and do not far outweigh its bag. */
export function checkSessionHours(content: Content): readonly Fault[] {
  const { hours, known, settings, unsettled } = content;
  if (hours.length === 0) return [];
  const faults: Fault[] = [];
  const events = new Map(content.events.map(({ value }) => [value.id, value]));
  const sessions = sessionsByKey(content);
  const unknownEvent = unknownEventName(known.events.keys());
  const parts = [...settings.bagParts.map(({ id }) => id), WHOLE_BAG];
  const unknownPart = unknownName('part-unknown', parts, parts.join(', '), 'Write one of these.');
  const written = new Map<string, number>();
  for (const { value, source, line } of hours) {
    const { event, peg, hour, part } = value;
    const length = events.get(event)?.hours;
    if (!known.events.has(event)) {
      if (!known.mayLackEvents) faults.push(unknownEvent(source(), ['event'], event));
    } else if (!sessions.has(hoursKey(value)) && !sessions.mayLack(event, peg)) {
      faults.push(
        faultAt(source(), ['peg'], {
          rule: 'hours-session',
          found: `hours of peg ${shown(peg)} in ${event}${value.slip === undefined ? '' : `, slip ${value.slip}`}`,
          expected: 'a row of that peg in sessions.csv',
          mend: 'Correct the event, peg or slip, or delete the row.',
        }),
      );
    } else if (length !== undefined && hour > hoursBegun(length)) {
      faults.push(
        faultAt(source(), ['hour'], {
          rule: 'hour-range',
          found: `hour ${hour} of an event of ${length} hours`,
          expected: `1 to ${hoursBegun(length)}`,
          mend: 'Correct the hour, counted from the all in, or the hours of the event.',
        }),
      );
    }
    if (!parts.includes(part) && !unsettled.has('bag-parts')) faults.push(unknownPart(source(), ['part'], part));
    const key = `${hoursKey(value)}\n${hour}\n${part}`;
    const first = written.get(key);
    if (first === undefined) written.set(key, line);
    else {
      faults.push(
        faultAt(source(), ['hour'], {
          rule: 'hours-twice',
          found: `hour ${hour} of ${part} at peg ${shown(peg)} a second time in ${event}`,
          expected: `one row for each; the first is in line ${first}`,
          mend: 'Delete one of the two rows, or add them up.',
        }),
      );
    }
  }
  return [...faults, ...tooHeavy(content, sessions)];
}

interface SessionsByKey {
  readonly has: (key: string) => boolean;
  readonly get: (key: string) => Session | undefined;
  /** Whether a row that could not be read may be the one. */
  readonly mayLack: (event: string, peg: string) => boolean;
}

function sessionsByKey({ sessions, halfRead }: Content): SessionsByKey {
  const byKey = new Map(
    sessions.map(({ value }) => [hoursKey({ ...value, peg: value.painted ?? value.peg }), value] as const),
  );
  return {
    has: (key) => byKey.has(key),
    get: (key) => byKey.get(key),
    mayLack: (event, peg) =>
      halfRead.sessions.some(({ value }) => (value.event ?? event) === event && (value.peg ?? peg) === peg),
  };
}

/** A warning: what lies in a net is guessed, and the scales' weight stands. */
function tooHeavy({ hours, settings }: Content, sessions: SessionsByKey): readonly Fault[] {
  const bySession = Map.groupBy(hours, ({ value }) => hoursKey(value));
  return [...bySession].flatMap(([key, rows]) => {
    const [first] = rows;
    const session = sessions.get(key);
    if (first === undefined || session === undefined) return [];
    const weighed = session.status === 'blank' ? 0 : session.weightGrams;
    const longest = Math.max(...rows.map(({ value }) => value.hour));
    const noted = gramsByHour(
      rows.map(({ value }) => value),
      longest,
    ).reduce((sum, grams) => sum + grams, 0);
    if (weighed === undefined || noted <= weighed || !areFarApart(noted, weighed)) return [];
    return [
      faultAt(first.source(), ['weight'], {
        rule: 'hours-weight',
        found: `hours that come to ${formatWeight(noted, settings.units)} together`,
        expected: `about the bag, ${formatWeight(weighed, settings.units)}`,
        mend: 'See whether they are of this peg. Only their shares of the bag are used; the scales’ weight stands.',
        severity: 'warning',
      }),
    ];
  });
}
