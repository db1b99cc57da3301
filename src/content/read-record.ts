import type * as z from 'zod';
import type { Fault } from './fault.ts';
import { readBody } from './read-body.ts';
import { type Reading, reading } from './reading.ts';
import { readFieldsLeniently } from './schemas/read-fields.ts';
import { readMarkdownRecord } from './sources/front-matter.ts';
import type { Placed } from './sources/source.ts';

/**
 * Reads a record whose text is published as it is.
 * @param make puts the record together from its fields and its text, without the blank lines about that
 * @param ofName what is wrong with the file's name, told before the rest
 */
export function readRecord<F, T>(
  file: string,
  text: string,
  schema: z.ZodType<F>,
  make: (fields: F, markdown: string) => T,
  ofName: readonly Fault[] = [],
): Reading<Placed<T> | null> {
  const { record, faults } = readMarkdownRecord(file, text);
  if (record === null) return reading(null, faults);
  const { source, body } = record;
  const read = readFieldsLeniently(schema, source.value, source);
  const all = [...faults, ...ofName, ...read.faults, ...readBody(record).faults];
  return reading(read.value === null ? null : { value: make(read.value, body.trim()), source }, all);
}
