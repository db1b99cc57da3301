import type { Units } from '../../domain/bag.ts';
import { yearOf } from '../../domain/day.ts';
import { hoursBegun } from '../../domain/hour-weight.ts';
import { formatWeight } from '../../domain/weight.ts';
import type { Slip } from '../../match-day/slip.ts';
import { LogTable } from '../papers/log-table.ts';
import type { StagedFiles } from './staged-files.ts';
import { writtenWeight } from './written-weight.ts';

const COLUMNS = ['event', 'peg', 'hour', 'part', 'weight'];
/** A fish landed at the all out is noted a little later; one noted this long before or after is of no hour (our own choice). */
const LATE_MINUTES = 15;

/** The session whose hours a slip tells. */
export interface HoursSession {
  readonly event: string;
  readonly hours: number;
  /** Empty for the row of a match. */
  readonly slip: string;
}

/** Writes what a slip says of when the fish came, in place of what was written of that session before; told in lines. */
export function putHours(slip: Slip, session: HoursSession, units: Units, files: StagedFiles): readonly string[] {
  const path = `sessions/${yearOf(slip.day)}/hours.csv`;
  const text = files.text(path);
  const { within, outside } = byHour(slip, session.hours);
  const isOf = (row: Readonly<Record<string, string>>) =>
    row.event === session.event && row.peg === slip.peg && (row.slip ?? '') === session.slip;
  const table = new LogTable(text, COLUMNS);
  const had = table.rows().some(isOf);
  if (within.length === 0 && !had) return outsideWords(slip, outside, units);
  if (session.slip !== '') table.need(['slip']);
  const before = table.rows().filter(isOf);
  const rows = within.map(({ hour, part, grams }) => ({
    event: session.event,
    peg: slip.peg,
    ...(session.slip === '' ? {} : { slip: session.slip }),
    hour: String(hour),
    part,
    weight: writtenWeight(grams, units.weight),
  }));
  const lines = (of: readonly Readonly<Record<string, string>>[]) =>
    of.map(({ hour, part, weight }) => [hour, part, weight].join(' ')).join('\n');
  if (lines(before) === lines(rows)) return [];
  table.replace(isOf, rows);
  files.put(path, table.text());
  const told = [...Map.groupBy(within, ({ hour }) => hour)].map(([hour, of]) => {
    const grams = of.reduce((sum, each) => sum + each.grams, 0);
    return `${hour}: ${formatWeight(grams, units)}`;
  });
  return [
    `${session.event}, peg ${slip.peg}: by hour of the match ${told.length === 0 ? 'nothing' : told.join(', ')}${had ? ', in place of what was written' : ''}`,
    ...outsideWords(slip, outside, units),
  ];
}

interface OfHour {
  readonly hour: number;
  readonly part: string;
  readonly grams: number;
}

/** What was caught by hour and part, in order, and the weight noted at no hour of the match. */
function byHour({ caught }: Slip, hours: number): { readonly within: readonly OfHour[]; readonly outside: number } {
  const isNear = (minute: number) => minute >= -LATE_MINUTES && minute <= hours * 60 + LATE_MINUTES;
  const hourOf = (minute: number) => Math.min(Math.max(Math.floor(minute / 60) + 1, 1), hoursBegun(hours));
  const groups = Map.groupBy(
    caught.filter(({ minute }) => isNear(minute)),
    ({ minute, part }) => `${String(hourOf(minute)).padStart(3, '0')} ${part}`,
  );
  const within = [...groups]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([, of]) => ({
      hour: hourOf(of[0]!.minute),
      part: of[0]!.part,
      grams: of.reduce((sum, { grams }) => sum + grams, 0),
    }));
  const outside = caught.reduce((sum, { minute, grams }) => sum + (isNear(minute) ? 0 : grams), 0);
  return { within, outside };
}

function outsideWords({ peg }: Slip, outside: number, units: Units): readonly string[] {
  if (outside === 0) return [];
  return [
    `Peg ${peg}: ${formatWeight(outside, units)} was noted more than ${LATE_MINUTES} minutes outside the match and is put to no hour. Was the all in set right?`,
  ];
}
