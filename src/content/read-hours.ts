import type { Units } from '../domain/bag.ts';
import type { HourWeight } from '../domain/hour-weight.ts';
import { type RowsRead, readRows } from './read-rows.ts';
import { hoursRowSchema } from './schemas/hours-schema.ts';
import { rowColumns } from './schemas/row-columns.ts';

/** Reads `sessions/<year>/hours.csv`. */
export function readHours(file: string, text: string, units: Units): RowsRead<HourWeight> {
  const schema = hoursRowSchema(units);
  return readRows(file, text, schema, rowColumns(schema));
}
