import type { Units } from '../domain/bag.ts';
import type { Water } from '../domain/map.ts';
import { readBody } from './read-body.ts';
import { type Reading, reading } from './reading.ts';
import { readFieldsLeniently } from './schemas/read-fields.ts';
import { waterSchema } from './schemas/water-schema.ts';
import { readMarkdownRecord } from './sources/front-matter.ts';
import type { Placed } from './sources/source.ts';
import { fileStem } from './venue-files.ts';

/** Makes the reader of `waters/<water>.md` for a venue's units. */
export function waterReader(units: Units): (file: string, text: string) => Reading<Placed<Omit<Water, 'map'>> | null> {
  const schema = waterSchema(units);
  return (file, text) => {
    const { record, faults } = readMarkdownRecord(file, text);
    if (record === null) return reading(null, faults);
    const { source, body } = record;
    const read = readFieldsLeniently(schema, source.value, source);
    const all = [...faults, ...read.faults, ...readBody(record).faults];
    if (read.value === null) return reading(null, all);
    return reading({ value: { ...read.value, id: fileStem(file), notesMarkdown: body.trim() }, source }, all);
  };
}
