import type { League } from '../domain/league.ts';
import { readRecord } from './read-record.ts';
import type { Reading } from './reading.ts';
import { LeagueSchema } from './schemas/league-schema.ts';
import type { Placed } from './sources/source.ts';
import { fileStem } from './venue-files.ts';

/** Reads `leagues/<slug>.md`. */
export function readLeague(file: string, text: string): Reading<Placed<League> | null> {
  return readRecord(file, text, LeagueSchema, (fields, markdown) => ({ ...fields, id: fileStem(file), markdown }));
}
