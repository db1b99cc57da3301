import type { Units } from '../domain/bag.ts';
import { isDay } from '../domain/day.ts';
import type { PlacedRound } from './content.ts';
import type { Fault } from './fault.ts';
import { readRows } from './read-rows.ts';
import { type Reading, reading } from './reading.ts';
import { REQUIRED_ROUND_COLUMNS, ROUND_COLUMNS, roundRowSchema } from './schemas/round-schema.ts';
import { faultOfFile } from './sources/source.ts';
import { fileStem } from './venue-files.ts';

/** Reads `rounds/<date>-<ref>.csv`. */
export function readRound(file: string, text: string, units: Units): Reading<PlacedRound | null> {
  const name = roundName(file);
  const { rows, halfRead, faults, leftOut } = readRows(file, text, roundRowSchema(units), {
    required: REQUIRED_ROUND_COLUMNS,
    optional: ROUND_COLUMNS.slice(REQUIRED_ROUND_COLUMNS.length),
  });
  if (name === null) return reading(null, [nameFault(file), ...faults], leftOut);
  const value = { ...name, entries: rows.map((row) => row.value), file };
  return reading({ value, rows, halfRead }, faults, leftOut);
}

/** The day and reference a round's file name holds, or null. */
export function roundName(file: string): { readonly ref: string; readonly day: string } | null {
  const [, day, ref] = /^(\d{4}-\d{2}-\d{2})-([a-z0-9]{2,32})$/.exec(fileStem(file)) ?? [];
  return day !== undefined && ref !== undefined && isDay(day) ? { ref, day } : null;
}

function nameFault(file: string): Fault {
  return faultOfFile(file, {
    rule: 'round-name',
    found: `the file name ${fileStem(file)}`,
    expected: 'a day and a reference, such as 2026-11-12-k7q2.csv',
    mend: 'Rename the file: the day that was walked, a hyphen, and small letters and digits.',
  });
}
