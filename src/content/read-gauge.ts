import type { Units } from '../domain/bag.ts';
import type { GaugeReading } from '../domain/venue.ts';
import { type RowsRead, readRows } from './read-rows.ts';
import { gaugeRowSchema } from './schemas/gauge-schema.ts';
import { fileStem } from './venue-files.ts';

/** Reads `gauge/<water>.csv`. */
export function readGauge(file: string, text: string, units: Units): RowsRead<GaugeReading> {
  const columns = { required: ['date'], optional: ['level', 'water_temperature'] };
  const read = readRows(file, text, gaugeRowSchema(units), columns);
  const water = fileStem(file);
  return { ...read, rows: read.rows.map(({ value, line, source }) => ({ value: { ...value, water }, line, source })) };
}
