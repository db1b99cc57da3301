import type { Session } from '../domain/session.ts';
import type { VenueSettings } from '../domain/venue.ts';
import { type RowsRead, readRows } from './read-rows.ts';
import { rowColumns } from './schemas/row-columns.ts';
import { sessionRowSchema } from './schemas/session-schema.ts';

/**
 * Reads `sessions/<year>/sessions.csv`.
 * @param unsettled fields of `venue.md` that could not be read
 * @param waters the water of every event; a session of an unknown event has an empty water, and the checks say so
 */
export function sessionsReader(
  settings: VenueSettings,
  unsettled: ReadonlySet<string>,
  waters: ReadonlyMap<string, string>,
): (file: string, text: string) => RowsRead<Session> {
  const schema = sessionRowSchema(settings.units, settings.bagParts).transform(
    (session): Session => ({ ...session, water: waters.get(session.event) ?? '' }),
  );
  const { required, optional } = rowColumns(schema);
  return (file, text) => {
    // Where the parts cannot be told, that is one fault, not one for each of their columns.
    const unknownParts = unsettled.has('bag-parts') ? columnsLikeParts(text) : [];
    // The bag's weight is in one column, or in two.
    const hasTwo = /^[^\r\n]*\bweight_(?:lb|oz)\b/.test(text);
    const columns = { required: hasTwo ? required : [...required, 'weight'], optional: [...optional, ...unknownParts] };
    return readRows(file, text, schema, columns);
  };
}

function columnsLikeParts(text: string): readonly string[] {
  return text.slice(0, text.search(/[\r\n]|$/)).match(/[a-z][a-z0-9]*_(?:weight(?:_lb|_oz)?|count)/g) ?? [];
}
