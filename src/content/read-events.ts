import type { FishingEvent } from '../domain/session.ts';
import { type RowsRead, readRows } from './read-rows.ts';
import { EventRowSchema } from './schemas/event-schema.ts';
import { rowColumns } from './schemas/row-columns.ts';

const COLUMNS = rowColumns(EventRowSchema);

/** Reads `sessions/<year>/events.csv`. */
export function readEvents(file: string, text: string): RowsRead<FishingEvent> {
  return readRows(file, text, EventRowSchema, COLUMNS);
}
