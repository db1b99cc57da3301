import type { Units } from '../domain/bag.ts';
import type { Water } from '../domain/map.ts';
import { readRecord } from './read-record.ts';
import type { Reading } from './reading.ts';
import { waterSchema } from './schemas/water-schema.ts';
import type { Placed } from './sources/source.ts';
import { fileStem } from './venue-files.ts';

/** Makes the reader of `waters/<water>.md` for a venue's units. */
export function waterReader(units: Units): (file: string, text: string) => Reading<Placed<Omit<Water, 'map'>> | null> {
  const schema = waterSchema(units);
  return (file, text) =>
    readRecord(file, text, schema, (fields, notesMarkdown) => ({ ...fields, id: fileStem(file), notesMarkdown }));
}
