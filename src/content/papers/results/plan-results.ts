import { yearOf } from '../../../domain/day.ts';
import type { FishingEvent } from '../../../domain/session.ts';
import type { StagedFiles } from '../../intake/staged-files.ts';
import { LogTable } from '../log-table.ts';
import type { ResultMatch, ResultRow } from './result-row.ts';

/** What an import does to one event of the log. */
export interface EventChange {
  readonly event: string;
  readonly kind: 'new' | 'corrected' | 'same';
  readonly sessions: number;
  /** Of a corrected event: a line for each session that differs. */
  readonly differences: readonly string[];
}

const EVENT_COLUMNS = ['event', 'date', 'water', 'kind', 'hours', 'listing', 'frame_places', 'fished'];
const SESSION_COLUMNS = ['event', 'section', 'peg', 'angler', 'status', 'weight'];

/**
 * Puts the matches of papers into the log. A match of a day on a water is one event: a corrected paper brings its rows in
 * place of the old ones and keeps what was typed beside them (spot, method, bait), and the same paper again adds nothing.
 * @param reference the angler reference of a name as written
 */
export function planResults(
  matches: readonly ResultMatch[],
  events: readonly FishingEvent[],
  reference: (name: string) => string | undefined,
  files: StagedFiles,
): readonly EventChange[] {
  return matches.flatMap((match) =>
    [...new Set(match.rows.map(({ water }) => water))].map((water) => {
      const known = events.find((event) => event.day === match.day && event.water === water && event.kind === 'match');
      const id = known?.id ?? `${match.day}-${water}`;
      return planEvent(id, water, match, reference, files);
    }),
  );
}

function planEvent(
  id: string,
  water: string,
  match: ResultMatch,
  reference: (name: string) => string | undefined,
  files: StagedFiles,
): EventChange {
  const folder = `sessions/${yearOf(match.day)}`;
  const events = tableOf(files, `${folder}/events.csv`, EVENT_COLUMNS);
  const sessions = tableOf(files, `${folder}/sessions.csv`, SESSION_COLUMNS);
  const isEvent = (row: Readonly<Record<string, string>>): boolean => row.event === id;
  const before = sessions.rows().filter(isEvent);
  const eventBefore = events.rows().find(isEvent);
  const own = match.rows.filter((row) => row.water === water);
  const rows = own.map((row) => sessionCells(id, row, reference, before));
  sessions.need([...new Set(rows.flatMap((row) => Object.keys(row).filter((column) => row[column] !== '')))]);
  sessions.replace(isEvent, rows);
  events.need([
    ...EVENT_COLUMNS.slice(0, match.fished === null ? -1 : undefined),
    ...(match.match === undefined ? [] : ['match']),
  ]);
  events.replace(isEvent, [{ ...eventBefore, ...fewerListed(eventBefore, match), ...eventCells(id, water, match) }]);
  const eventAfter = events.rows().find(isEvent)!;
  const differences = [
    ...(eventBefore === undefined ? [] : differingCells('the match', eventBefore, eventAfter)),
    ...differingRows(before, sessions.rows().filter(isEvent)),
  ];
  if (eventBefore === undefined || differences.length > 0) {
    files.put(`${folder}/events.csv`, events.text());
    files.put(`${folder}/sessions.csv`, sessions.text());
  }
  const kind = eventBefore === undefined ? 'new' : differences.length > 0 ? 'corrected' : 'same';
  return { event: id, kind, sessions: rows.length, differences: kind === 'corrected' ? differences : [] };
}

function tableOf(files: StagedFiles, path: string, columns: readonly string[]): LogTable {
  return new LogTable(files.text(path), columns);
}

/** A paper that was mended lists everybody: how many fished is counted from then on. */
function fewerListed(before: Readonly<Record<string, string>> | undefined, match: ResultMatch): Record<string, string> {
  return before?.listing === 'frame' && match.listing === 'full' && before.fished ? { fished: '' } : {};
}

function eventCells(id: string, water: string, match: ResultMatch): Record<string, string> {
  return {
    event: id,
    date: match.day,
    water,
    kind: 'match',
    hours: String(match.hours),
    listing: match.listing,
    frame_places: String(match.framePlaces),
    ...(match.fished === null ? {} : { fished: String(match.fished) }),
    ...(match.match === undefined ? {} : { match: match.match }),
  };
}

function sessionCells(
  id: string,
  row: ResultRow,
  reference: (name: string) => string | undefined,
  before: readonly Readonly<Record<string, string>>[],
): Record<string, string> {
  const typed = before.find(({ peg }) => peg === row.peg);
  const cells: Record<string, string> = {
    ...typed,
    event: id,
    section: row.section ?? '',
    peg: row.peg,
    // Who is not named this time stays who they were.
    angler: (row.name === '' ? typed?.angler : reference(row.name)) ?? '',
    status: row.status,
    weight: row.weight?.written ?? '',
  };
  if (row.status !== 'weighed' && row.status !== 'blank') {
    for (const column of Object.keys(cells)) if (/_(weight|count)$/.test(column)) cells[column] = '';
  }
  for (const [part, { written, count }] of Object.entries(row.parts)) {
    if (written !== undefined) cells[`${part}_weight`] = written;
    if (count !== undefined) cells[`${part}_count`] = count === null ? '' : String(count);
  }
  return cells;
}

function differingRows(
  before: readonly Readonly<Record<string, string>>[],
  after: readonly Readonly<Record<string, string>>[],
): readonly string[] {
  if (before.length === 0) return [];
  const old = new Map(before.map((row) => [row.peg ?? '', row]));
  const now = new Map(after.map((row) => [row.peg ?? '', row]));
  return [
    ...[...now].flatMap(([peg, row]) => {
      const was = old.get(peg);
      return was === undefined ? [`peg ${peg}: new row`] : differingCells(`peg ${peg}`, was, row);
    }),
    ...[...old.keys()].flatMap((peg) => (now.has(peg) ? [] : [`peg ${peg}: row taken out`])),
  ];
}

function differingCells(
  what: string,
  before: Readonly<Record<string, string>>,
  after: Readonly<Record<string, string>>,
): readonly string[] {
  return Object.keys(after).flatMap((column) => {
    const [was, is] = [before[column] ?? '', after[column] ?? ''];
    return was === is ? [] : [`${what}: ${column} ${was === '' ? 'nothing' : was} → ${is === '' ? 'nothing' : is}`];
  });
}
