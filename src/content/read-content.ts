import { pegKey } from '../domain/peg.ts';
import type { FishingEvent } from '../domain/session.ts';
import type { VenueSettings } from '../domain/venue.ts';
import type { Content, KnownNames, PlacedWater } from './content.ts';
import { facingsFromShore } from './facings-from-shore.ts';
import type { Fault, LeftOut } from './fault.ts';
import { readLeague } from './read-league.ts';
import { readEvents, readGauge, readHours, readSoundings } from './read-log-tables.ts';
import { matchReader } from './read-match.ts';
import { readNotice } from './read-notice.ts';
import { pegReader } from './read-peg.ts';
import { readRound, roundName } from './read-round.ts';
import type { PlacedRow, RowsRead } from './read-rows.ts';
import { sessionsReader } from './read-sessions.ts';
import { readVenueSettings, STAND_IN_SETTINGS } from './read-venue-settings.ts';
import { waterReader } from './read-water.ts';
import { readWaterMap } from './read-water-map.ts';
import { type Reading, reading } from './reading.ts';
import { resolveNumbers } from './resolve-numbers.ts';
import { type SortedFiles, sortFiles } from './sort-files.ts';
import type { Placed } from './sources/source.ts';
import { compareNaturally, fileStem, type VenueFiles } from './venue-files.ts';

/**
 * Reads every file of the folder by the reader of its kind. The checks between them come after (`checks/`).
 * @param progress told of each file that was read
 */
export function readContent(files: VenueFiles, progress: (what: string) => void = () => undefined): Reading<Content> {
  const faults: Fault[] = [];
  const leftOut: LeftOut[] = [];
  // One by one: a hundred thousand faults are too many arguments for one call.
  const note = (read: { readonly faults: readonly Fault[]; readonly leftOut: readonly LeftOut[] }) => {
    for (const fault of read.faults) faults.push(fault);
    for (const left of read.leftOut) leftOut.push(left);
  };
  const textOf = (path: string) => files.texts.get(path) ?? '';
  const records = <T>(
    paths: readonly string[],
    read: (file: string, text: string) => Reading<T | null>,
  ): readonly T[] =>
    paths.flatMap((path) => {
      const result = read(path, textOf(path));
      progress(path);
      note(result);
      return result.value === null ? [] : [result.value];
    });
  const rows = <T>(paths: readonly string[], read: (file: string, text: string) => RowsRead<T>) =>
    paths.flatMap((path) => {
      const result = read(path, textOf(path));
      progress(path);
      note(result);
      return result;
    });

  const sorted = sortFiles(files);
  note(sorted);
  const settings = readVenueSettings(files);
  note(settings);
  const { value: values, source: settingsSource } = settings.value ?? { value: STAND_IN_SETTINGS, source: null };
  const unsettled = unsettledFields(settings);
  const { units } = values;
  const { paths } = sorted;

  const waterRecords = records(paths.water, waterReader(units));
  const maps = new Map(paths.map.map((path) => [fileStem(path), readWaterMap(path, textOf(path))]));
  for (const map of maps.values()) note(map);
  const known = knownNames(sorted, files);
  const waters = [...known.waters].map(
    (id): PlacedWater => ({
      id,
      record: waterRecords.find(({ value }) => value.id === id) ?? null,
      map: maps.get(id)?.value ?? null,
    }),
  );
  const eventReads = rows(paths.events, readEvents);
  const events = eventReads.flatMap((read) => read.rows);
  const eventWaters = watersOfEvents(eventReads);
  const sessionReads = rows(paths.sessions, sessionsReader(values, unsettled, eventWaters));
  const soundingReads = rows(paths.soundings, (file, text) => readSoundings(file, text, units));
  const stands = facingsFromShore(records(paths.peg, pegReader(units, values.guideDay)), waters);
  const content: Content = {
    files,
    settings: values,
    settingsSource,
    unsettled,
    waters,
    pegs: stands.filter(({ value }) => value.retired === undefined),
    retired: stands.filter(({ value }) => value.retired !== undefined),
    notices: records(paths.notice, readNotice),
    matches: records(paths.match, matchReader(units)),
    leagues: records(paths.league, readLeague),
    rounds: records(paths.round, (file, text) => readRound(file, text, units)),
    events,
    sessions: rowsOf(sessionReads),
    hours: rowsOf(rows(paths.hours, (file, text) => readHours(file, text, units))),
    soundings: rowsOf(soundingReads),
    gauge: rowsOf(rows(paths.gauge, (file, text) => readGauge(file, text, units))),
    halfRead: {
      events: eventReads.flatMap(({ halfRead }) => halfRead),
      sessions: sessionReads.flatMap(({ halfRead }) => halfRead),
      soundings: soundingReads.flatMap(({ halfRead }) => halfRead),
    },
    known: {
      ...known,
      events: eventWaters,
      mayLackEvents:
        eventReads.some(({ mayLackRows }) => mayLackRows) || isUnread(files, /^sessions\/\d{4}\/events\.csv$/),
    },
  };
  const resolved = resolveNumbers(content);
  note(resolved);
  return reading(resolved.value, faults, leftOut);
}

function isUnread(files: VenueFiles, pattern: RegExp): boolean {
  return [...files.unread].some((path) => pattern.test(path));
}

/** Fields of `venue.md` with a fault; a list that is missing counts where some field has a name nobody knows. */
function unsettledFields({ value, faults }: Reading<Placed<VenueSettings> | null>): ReadonlySet<string> {
  const lists = ['bag-parts', 'features'];
  if (value === null) return new Set(lists);
  const isMisspelt = faults.some(({ rule, field }) => rule === 'field-unknown' && !/[.[]/.test(field));
  return new Set([
    ...faults.map(({ field }) => field.split(/[.[]/)[0]!),
    ...lists.filter((field) => isMisspelt && value.source.writtenAt([field]) === undefined),
  ]);
}

function rowsOf<T>(reads: readonly RowsRead<T>[]): readonly PlacedRow<T>[] {
  return reads.flatMap((read) => read.rows);
}

/** The water of every event, also of rows with another fault, so that its sessions are not faulted for it. */
function watersOfEvents(reads: readonly RowsRead<FishingEvent>[]): ReadonlyMap<string, string> {
  const waters = new Map<string, string>();
  for (const { rows, unreadable } of reads) {
    for (const { cells } of unreadable) {
      if (cells.event !== undefined) waters.set(cells.event, cells.water ?? '');
    }
    for (const { value } of rows) waters.set(value.id, value.water);
  }
  return waters;
}

/** Names by their files alone: what is known does not depend on whether a record can be read. */
function knownNames({ paths }: SortedFiles, files: VenueFiles): Omit<KnownNames, 'events' | 'mayLackEvents'> {
  const unread = [...files.unread];
  const of = (read: readonly string[], pattern: RegExp) => [...read, ...unread.filter((path) => pattern.test(path))];
  const waters = [...of(paths.water, /^waters\/[^/]+\.md$/), ...of(paths.map, /^waters\/[^/]+\.geojson$/)].map(
    fileStem,
  );
  const pegs = of(paths.peg, /^pegs\/[^/]+\/[^/]+\.md$/).map((path) =>
    pegKey(path.split('/')[1] ?? '', fileStem(path)),
  );
  const rounds = of(paths.round, /^rounds\/[^/]+\.csv$/).map((path) => roundName(path)?.ref ?? '');
  return {
    waters: new Set(waters.sort(compareNaturally)),
    pegs: new Set(pegs),
    notices: new Set(of(paths.notice, /^notices\/[^/]+\.md$/).map(fileStem)),
    rounds: new Set(rounds),
  };
}
