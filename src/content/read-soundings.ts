import type { Units } from '../domain/bag.ts';
import type { Sounding } from '../domain/venue.ts';
import { type RowsRead, readRows } from './read-rows.ts';
import { rowColumns } from './schemas/row-columns.ts';
import { soundingRowSchema } from './schemas/sounding-schema.ts';
import { fileStem } from './venue-files.ts';

/** Reads `soundings/<water>.csv`. */
export function readSoundings(file: string, text: string, units: Units): RowsRead<Sounding> {
  const schema = soundingRowSchema(units);
  const read = readRows(file, text, schema, rowColumns(schema));
  const water = fileStem(file);
  return {
    ...read,
    rows: read.rows.map(({ value, line, source }) => ({ value: { ...value, water, file, line }, line, source })),
  };
}
