import type { Units } from '../domain/bag.ts';
import type { GaugeReading } from '../domain/venue.ts';
import { type RowsRead, readRows } from './read-rows.ts';
import { gaugeRowSchema } from './schemas/gauge-schema.ts';
import { rowColumns } from './schemas/row-columns.ts';
import { fileStem } from './venue-files.ts';

/** Reads `gauge/<water>.csv`. */
export function readGauge(file: string, text: string, units: Units): RowsRead<GaugeReading> {
  const schema = gaugeRowSchema(units);
  const read = readRows(file, text, schema, rowColumns(schema));
  const water = fileStem(file);
  return { ...read, rows: read.rows.map(({ value, line, source }) => ({ value: { ...value, water }, line, source })) };
}
