import type { Water } from '../domain/map.ts';
import { readBody } from './read-body.ts';
import { type Reading, reading } from './reading.ts';
import { readFieldsLeniently } from './schemas/read-fields.ts';
import { WaterSchema } from './schemas/water-schema.ts';
import { readMarkdownRecord } from './sources/front-matter.ts';
import type { Placed } from './sources/source.ts';
import { fileStem } from './venue-files.ts';

/** Reads `waters/<water>.md`. */
export function readWater(file: string, text: string): Reading<Placed<Omit<Water, 'map'>> | null> {
  const { record, faults } = readMarkdownRecord(file, text);
  if (record === null) return reading(null, faults);
  const { source, body } = record;
  const read = readFieldsLeniently(WaterSchema, source.value, source);
  const all = [...faults, ...read.faults, ...readBody(record).faults];
  if (read.value === null) return reading(null, all);
  return reading({ value: { ...read.value, id: fileStem(file), notesMarkdown: body.trim() }, source }, all);
}
