import type { Session } from '../domain/session.ts';
import type { VenueSettings } from '../domain/venue.ts';
import { type RowsRead, readRows } from './read-rows.ts';
import { partColumns, sessionRowSchema } from './schemas/session-schema.ts';

const REQUIRED = ['event', 'peg', 'status', 'weight'] as const;
const OPTIONAL = ['section', 'angler', 'spot', 'method', 'bait', 'lines'] as const;

/**
 * Reads `sessions/<year>/sessions.csv`.
 * @param waters the water of every event; a session of an unknown event has an empty water, and the checks say so
 */
export function sessionsReader(
  settings: VenueSettings,
  waters: ReadonlyMap<string, string>,
): (file: string, text: string) => RowsRead<Session> {
  const schema = sessionRowSchema(settings.units, settings.bagParts).transform(
    (session): Session => ({ ...session, water: waters.get(session.event) ?? '' }),
  );
  const optional = [...OPTIONAL, ...settings.bagParts.flatMap((part) => partColumns(part))];
  return (file, text) => readRows(file, text, schema, { required: REQUIRED, optional });
}
