import type { FishingEvent } from '../domain/session.ts';
import { type RowsRead, readRows } from './read-rows.ts';
import { EventRowSchema } from './schemas/event-schema.ts';

const REQUIRED = ['event', 'date', 'water', 'kind', 'hours', 'listing', 'frame_places'] as const;
const OPTIONAL = [
  'fished',
  'air_temperature',
  'water_temperature',
  'wind_from',
  'wind_speed',
  'sky',
  'match',
  'blank_means',
] as const;

/** Reads `sessions/<year>/events.csv`. */
export function readEvents(file: string, text: string): RowsRead<FishingEvent> {
  return readRows(file, text, EventRowSchema, { required: REQUIRED, optional: OPTIONAL });
}
