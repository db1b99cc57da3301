import type { Units } from '../domain/bag.ts';
import type { HourWeight } from '../domain/hour-weight.ts';
import type { FishingEvent } from '../domain/session.ts';
import type { GaugeReading, Sounding } from '../domain/venue.ts';
import { type PlacedRow, type RowsRead, readRows } from './read-rows.ts';
import { EventRowSchema } from './schemas/event-schema.ts';
import { gaugeRowSchema } from './schemas/gauge-schema.ts';
import { hoursRowSchema } from './schemas/hours-schema.ts';
import { rowColumns } from './schemas/row-columns.ts';
import { soundingRowSchema } from './schemas/sounding-schema.ts';
import { fileStem } from './venue-files.ts';

const EVENT_COLUMNS = rowColumns(EventRowSchema);

/** Reads `sessions/<year>/events.csv`. */
export function readEvents(file: string, text: string): RowsRead<FishingEvent> {
  return readRows(file, text, EventRowSchema, EVENT_COLUMNS);
}

/** Reads `sessions/<year>/hours.csv`. */
export function readHours(file: string, text: string, units: Units): RowsRead<HourWeight> {
  const schema = hoursRowSchema(units);
  return readRows(file, text, schema, rowColumns(schema));
}

/** Reads `gauge/<water>.csv`. */
export function readGauge(file: string, text: string, units: Units): RowsRead<GaugeReading> {
  const schema = gaugeRowSchema(units);
  const read = readRows(file, text, schema, rowColumns(schema));
  return withPlaces(read, () => ({ water: fileStem(file) }));
}

/** Reads `soundings/<water>.csv`. */
export function readSoundings(file: string, text: string, units: Units): RowsRead<Sounding> {
  const schema = soundingRowSchema(units);
  const read = readRows(file, text, schema, rowColumns(schema));
  return withPlaces(read, (line) => ({ water: fileStem(file), file, line }));
}

/** Rows that know what their file says of all of them. */
function withPlaces<T, P>(read: RowsRead<T>, placeOf: (line: number) => P): RowsRead<T & P> {
  const placed = ({ value, ...row }: PlacedRow<T>) => ({ ...row, value: { ...value, ...placeOf(row.line) } });
  return { ...read, rows: read.rows.map(placed) };
}
