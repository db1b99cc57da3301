import * as z from 'zod';
import type { Units } from '../../domain/bag.ts';
import { AssociationSchema } from './association-schema.ts';
import { EventRowSchema } from './event-schema.ts';
import type { SchemaPart } from './field-list.ts';
import { gaugeRowSchema } from './gauge-schema.ts';
import { hoursRowSchema } from './hours-schema.ts';
import { LeagueSchema } from './league-schema.ts';
import { matchSchema } from './match-schema.ts';
import { NoticeSchema } from './notice-schema.ts';
import { pegSchema } from './peg-schema.ts';
import { roundRowSchema } from './round-schema.ts';
import { sessionRowSchema } from './session-schema.ts';
import { settingsSchema } from './settings-schema.ts';
import { soundingRowSchema } from './sounding-schema.ts';
import { WaterMapSchema } from './water-map-schema.ts';
import { waterSchema } from './water-schema.ts';

/** Units change what a bare number means, not what an editor lets through. */
const UNITS: Units = { length: 'm', weight: 'lb' };

const SCHEMAS: Readonly<Record<string, { readonly title: string; readonly schema: z.ZodType }>> = {
  venue: { title: 'Front matter of venue.md', schema: settingsSchema(UNITS) },
  water: { title: 'Front matter of waters/<water>.md', schema: waterSchema(UNITS) },
  'water-map': { title: 'waters/<water>.geojson', schema: WaterMapSchema },
  peg: { title: 'Front matter of pegs/<water>/<peg>.md', schema: pegSchema(UNITS) },
  notice: { title: 'Front matter of notices/<date>-<slug>.md', schema: NoticeSchema },
  match: { title: 'Front matter of matches/<date>-<slug>.md', schema: matchSchema(UNITS) },
  league: { title: 'Front matter of leagues/<slug>.md', schema: LeagueSchema },
  association: {
    title: 'Front matter of association.md',
    schema: AssociationSchema,
  },
  'event-row': { title: 'A row of sessions/<year>/events.csv', schema: EventRowSchema },
  'session-row': {
    title: 'A row of sessions/<year>/sessions.csv, bag parts aside',
    schema: sessionRowSchema(UNITS, []),
  },
  'hours-row': { title: 'A row of sessions/<year>/hours.csv', schema: hoursRowSchema(UNITS) },
  'sounding-row': { title: 'A row of soundings/<water>.csv', schema: soundingRowSchema(UNITS) },
  'gauge-row': { title: 'A row of gauge/<water>.csv', schema: gaugeRowSchema(UNITS) },
  'round-row': { title: 'A row of rounds/<date>-<ref>.csv', schema: roundRowSchema(UNITS) },
};

/** The JSON Schema of one kind of record, as its files are written. */
export function recordJsonSchema(name: 'peg' | 'water'): SchemaPart {
  return asWritten(SCHEMAS[name]!.schema) as SchemaPart;
}

/** The schema of what is written, with the examples of fields, which are texts as they are written too. */
function asWritten(schema: z.ZodType) {
  return z.toJSONSchema(schema, {
    io: 'input',
    override: ({ zodSchema, jsonSchema }) => {
      const examples = z.globalRegistry.get(zodSchema)?.examples;
      if (Array.isArray(examples)) jsonSchema.examples = examples;
    },
  });
}

/** JSON Schema files (draft 2020-12) for editors, by file name: each kind of file a club keeps, as it is written. */
export function jsonSchemas(): ReadonlyMap<string, string> {
  return new Map(
    Object.entries(SCHEMAS).map(([name, { title, schema }]) => {
      const { $schema, ...rest } = asWritten(schema);
      return [
        `${name}.json`,
        `${JSON.stringify({ $schema, $id: `urn:peg-atlas:schema:${name}`, title, ...rest }, null, 2)}\n`,
      ];
    }),
  );
}
