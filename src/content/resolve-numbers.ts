import type { Day } from '../domain/day.ts';
import type { Match } from '../domain/match.ts';
import { type Bearer, type NumberBook, numberBook } from '../domain/number-book.ts';
import { type Peg, type PegKey, pegKey } from '../domain/peg.ts';
import type { RoundEntry } from '../domain/round.ts';
import type { Content, PlacedRound } from './content.ts';
import type { Fault, LeftOut } from './fault.ts';
import { type Reading, reading } from './reading.ts';
import { soundingPlace } from './sounding-place.ts';
import { type FieldPath, faultAt, type Placed, type Source } from './sources/source.ts';
import { shown } from './sources/text-place.ts';

/** Looks up one number and notes what is wrong with it; null where no stand carried it that day. */
type LookUp = (water: string, number: string, day: Day, source: () => Source, path: FieldPath) => Peg | null;

/**
 * Puts the stand of today for every number of its own day: in sessions, soundings, rounds and notices alike. A number that
 * somebody carried, but nobody on that day, is refused. Numbers nobody ever had are left to the checks of names. A folder
 * whose numbers never changed comes back as it was.
 */
export function resolveNumbers(content: Content): Reading<Content> {
  const stands = [...content.pegs, ...content.retired];
  const hasHistory = ({ value }: Placed<Peg>) =>
    value.was !== undefined || value.since !== undefined || value.moved !== undefined || value.retired !== undefined;
  if (!stands.some(hasHistory)) return reading(content, []);
  const faults: Fault[] = [];
  const leftOut: LeftOut[] = [];
  const find = lookUp(numberBook(stands.map(({ value }) => value)), faults);
  const isRetired = new Set(content.retired.map(({ value }) => pegKey(value.water, value.peg)));
  const resolved = {
    sessions: sessionsOf(content, find),
    soundings: soundingsOf(content, find, faults, leftOut),
    rounds: content.rounds.map((round) => roundOf(round, find)),
    notices: noticesOf(content, find, isRetired, leftOut),
    matches: content.matches.map((match) => matchOfToday(match, find)),
  };
  return reading({ ...content, ...resolved }, faults, leftOut);
}

function lookUp(book: NumberBook, faults: Fault[]): LookUp {
  return (water, number, day, source, path) => {
    const found = book.standOn(water, number, day);
    if (found.ok) return found.stand;
    if (found.before !== undefined || found.after !== undefined) {
      faults.push(
        faultAt(source(), path, {
          rule: 'peg-number-day',
          found: `${shown(number)}, which no post of ${water} carried on ${day}`,
          expected: [found.before, found.after]
            .flatMap((bearer) => bearer ?? [])
            .map(bearerWords)
            .join('; '),
          mend: 'Correct the number or the day; or, where the sheet is right, the days in the record named (was, since).',
        }),
      );
    }
    return null;
  };
}

/** Who carried a number, and in which record that is said. */
function bearerWords({ stand, spell }: Bearer): string {
  const who =
    stand.retired === undefined ? `the stand that is peg ${stand.peg} today` : 'a stand that is retired today';
  const when = [
    spell.from === undefined ? '' : `from ${spell.from}`,
    spell.until === undefined ? '' : `until ${spell.until}`,
  ];
  return `${who} carried it ${when.filter((part) => part !== '').join(' ')} (${stand.file})`;
}

function sessionsOf({ sessions, events }: Content, find: LookUp): Content['sessions'] {
  const days = new Map(events.map(({ value }) => [value.id, value.day]));
  return sessions.flatMap((row) => {
    const { water, peg, event } = row.value;
    const day = days.get(event);
    if (day === undefined) return [row];
    const before = row.source;
    const stand = find(water, peg, day, before, ['peg']);
    if (stand === null || stand.peg === peg) return [row];
    return [{ ...row, value: { ...row.value, peg: stand.peg, painted: peg } }];
  });
}

function soundingsOf(content: Content, find: LookUp, faults: Fault[], leftOut: LeftOut[]): Content['soundings'] {
  return content.soundings.flatMap((row) => {
    const { fromPeg, water, day, ...measured } = row.value;
    if (fromPeg === undefined) return [row];
    const stand = find(water, fromPeg.peg, day, row.source, ['peg']);
    if (stand === null) return [row];
    const place = soundingPlace(stand, fromPeg, day);
    if (place === 'as-today') {
      return [
        stand.peg === fromPeg.peg ? row : { ...row, value: { ...row.value, fromPeg: { ...fromPeg, peg: stand.peg } } },
      ];
    }
    if (place !== null) return [{ ...row, value: { ...measured, water, day, at: place } }];
    faults.push(faultAt(row.source(), ['peg'], beforeMove(fromPeg.peg, stand)));
    leftOut.push({
      file: row.value.file,
      line: row.line,
      what: `a sounding from peg ${fromPeg.peg}`,
      why: 'The peg was moved later, and its record does not say where it stood.',
    });
    return [];
  });
}

function beforeMove(number: string, { file }: Peg) {
  return {
    rule: 'sounding-before-move',
    found: `a depth plumbed from peg ${shown(number)} before it was moved`,
    expected: `was-at in the moved entry of ${file}, to place it by`,
    mend: 'Add was-at: { lat, lng } there, or give this row its own position. Until then it is left out.',
    severity: 'warning',
  } as const;
}

function roundOf(round: PlacedRound, find: LookUp): PlacedRound {
  const rows = round.rows.map((row) => {
    const { water, peg, day } = row.value;
    if (peg === undefined) return row;
    const stand = find(water, peg, day ?? round.value.day, row.source, ['peg']);
    return stand === null || stand.peg === peg ? row : { ...row, value: { ...row.value, peg: stand.peg } };
  });
  const byOld = new Map<RoundEntry, RoundEntry>(rows.map((row, i) => [round.rows[i]!.value, row.value]));
  return {
    ...round,
    rows,
    value: { ...round.value, entries: round.value.entries.map((entry) => byOld.get(entry) ?? entry) },
  };
}

/** A match keeps the numbers of its day; a plan for a day before a re-pegging is read as the stands of today. */
function matchOfToday({ value, source }: Placed<Match>, find: LookUp): Placed<Match> {
  const today = (path: FieldPath) => (key: PegKey, index: number) => {
    const [water = '', number = ''] = key.split('/');
    const stand = find(water, number, value.day, () => source, [...path, index]);
    return stand === null ? key : pegKey(stand.water, stand.peg);
  };
  return {
    source,
    value: {
      ...value,
      plan: value.plan.map(({ name, pegs }) => ({ name, pegs: pegs.map(today(['pegs', name])) })),
      kept: value.kept.map(today(['kept'])),
      leaveOut: value.leaveOut.map(today(['leave-out'])),
    },
  };
}

function noticesOf(
  { notices }: Content,
  find: LookUp,
  isRetired: ReadonlySet<PegKey>,
  leftOut: LeftOut[],
): Content['notices'] {
  return notices.flatMap((notice) => {
    const { value, source } = notice;
    const keys = value.pegs.map((key, index) => {
      const [water = '', number = ''] = key.split('/');
      const stand = find(water, number, value.from, () => source, ['pegs', index]);
      return stand === null ? key : pegKey(stand.water, stand.peg);
    });
    const inGuide = keys.filter((key) => !isRetired.has(key));
    if (keys.length > 0 && inGuide.length === 0 && value.waters.length === 0) {
      // Without pegs it would speak of the whole venue.
      leftOut.push({
        file: source.file,
        line: 1,
        what: 'a notice',
        why: 'Every peg it names is retired.',
      });
      return [];
    }
    return [{ ...notice, value: { ...value, pegs: inGuide } }];
  });
}
