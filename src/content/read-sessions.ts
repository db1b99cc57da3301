import type { Session } from '../domain/session.ts';
import type { VenueSettings } from '../domain/venue.ts';
import { type RowsRead, readRows } from './read-rows.ts';
import { STAND_IN_SETTINGS } from './read-venue-settings.ts';
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
  return (file, text) => {
    // Without venue.md nobody knows the parts: that is one fault, not one for each of their columns.
    const parts = settings === STAND_IN_SETTINGS ? columnsLikeParts(text) : [];
    return readRows(file, text, schema, { required: REQUIRED, optional: [...optional, ...parts] });
  };
}

function columnsLikeParts(text: string): readonly string[] {
  return text.slice(0, text.search(/[\r\n]|$/)).match(/[a-z][a-z0-9]*_(?:weight|count)/g) ?? [];
}
