import type { Units } from '../domain/bag.ts';
import type { Sounding } from '../domain/venue.ts';
import { type RowsRead, readRows } from './read-rows.ts';
import { soundingRowSchema } from './schemas/sounding-schema.ts';
import { fileStem } from './venue-files.ts';

const REQUIRED = ['depth', 'date'] as const;
const OPTIONAL = ['lat', 'lng', 'grid', 'peg', 'distance', 'bearing', 'level'] as const;

/** Reads `soundings/<water>.csv`. */
export function readSoundings(file: string, text: string, units: Units): RowsRead<Sounding> {
  const read = readRows(file, text, soundingRowSchema(units), { required: REQUIRED, optional: OPTIONAL });
  const water = fileStem(file);
  return {
    ...read,
    rows: read.rows.map(({ value, line, source }) => ({ value: { ...value, water, file, line }, line, source })),
  };
}
