import { pegKey } from '../../domain/peg.ts';
import type { Content } from '../content.ts';
import type { Fault } from '../fault.ts';
import { faultOfFile } from '../sources/source.ts';
import { type UnknownName, unknownName } from './unknown-name.ts';

/** Every session belongs to an event of the log, on a peg of that event's water. */
export function checkSessionNames({ sessions, events, known, files }: Content): readonly Fault[] {
  if (sessions.length === 0) return [];
  const missing = missingEventFiles(files.texts);
  if (missing.length > 0 && events.length === 0) return missing;
  const unknownEvent = unknownEventName(known.events.keys());
  const unknownPegOf = new Map<string, UnknownName>();
  const faults: Fault[] = [...missing];
  for (const { value, source } of sessions) {
    if (!known.events.has(value.event)) {
      // An events.csv that could not be read whole has its own faults; to advise on its sessions would be guessing.
      if (!known.mayLackEvents) faults.push(unknownEvent(source(), ['event'], value.event));
    } else if (known.waters.has(value.water) && !known.pegs.has(pegKey(value.water, value.peg))) {
      let unknownPeg = unknownPegOf.get(value.water);
      if (unknownPeg === undefined) {
        unknownPeg = unknownPegName(value.water, known.pegs);
        unknownPegOf.set(value.water, unknownPeg);
      }
      faults.push(unknownPeg(source(), ['peg'], value.peg));
    }
  }
  return faults;
}

/** Tells of events the log does not have. */
export function unknownEventName(events: Iterable<string>): UnknownName {
  return unknownName(
    'event-unknown',
    events,
    'an event of an events.csv',
    'Add the event to events.csv, or correct its name here.',
  );
}

/** Tells of pegs a water does not have. */
export function unknownPegName(water: string, pegs: Iterable<string>): UnknownName {
  const own = [...pegs].filter((key) => key.startsWith(`${water}/`)).map((key) => key.slice(water.length + 1));
  return unknownName(
    'peg-unknown',
    own,
    own.length === 1 ? `the one peg of ${water}` : `one of the ${own.length} pegs of ${water}`,
    `Correct the peg, or write its record in pegs/${water}/.`,
  );
}

/** A log of sessions without its list of events: one fault, not one for every row. */
function missingEventFiles(texts: ReadonlyMap<string, string>): readonly Fault[] {
  return [...texts.keys()]
    .filter((path) => /^sessions\/\d{4}\/sessions\.csv$/.test(path))
    .map((path) => path.replace('sessions.csv', 'events.csv'))
    .filter((path) => !texts.has(path))
    .map((path) =>
      faultOfFile(path, {
        rule: 'events-missing',
        found: 'no such file',
        expected: 'the events of the sessions beside it',
        mend: 'Write a row for each event: its date, water, kind, hours, listing and frame places.',
      }),
    );
}
