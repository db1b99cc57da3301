import type { League } from '../domain/league.ts';
import { readBody } from './read-body.ts';
import { type Reading, reading } from './reading.ts';
import { LeagueSchema } from './schemas/league-schema.ts';
import { readFieldsLeniently } from './schemas/read-fields.ts';
import { readMarkdownRecord } from './sources/front-matter.ts';
import type { Placed } from './sources/source.ts';
import { fileStem } from './venue-files.ts';

/** Reads `leagues/<slug>.md`. */
export function readLeague(file: string, text: string): Reading<Placed<League> | null> {
  const { record, faults } = readMarkdownRecord(file, text);
  if (record === null) return reading(null, faults);
  const { source, body } = record;
  const read = readFieldsLeniently(LeagueSchema, source.value, source);
  const all = [...faults, ...read.faults, ...readBody(record).faults];
  if (read.value === null) return reading(null, all);
  return reading({ value: { ...read.value, id: fileStem(file), markdown: body.trim() }, source }, all);
}
