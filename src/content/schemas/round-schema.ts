import * as z from 'zod';
import type { Units } from '../../domain/bag.ts';
import type { RoundEntry, RoundEntryKind } from '../../domain/round.ts';
import { cellText } from './cell-text.ts';
import { clearanceColumns } from './clearance-fields.ts';
import { PEG_NAME } from './dated-schemas.ts';
import { choice, day, matching, text, word } from './fields.ts';
import { hazardKind } from './hazard-schema.ts';
import { length, riskLevel, signedLength, temperature } from './measures.ts';
import { latitude, longitude } from './position-schema.ts';
import { named, recordOf, shapeOf } from './record-schema.ts';

const KINDS = [
  'visit',
  'inspected',
  'hazard-found',
  'hazard-checked',
  'hazard-worsened',
  'hazard-controlled',
  'hazard-cleared',
  'clearance',
  'snag-removed',
  'cut',
  'line-distance',
  'kit-checked',
  'closing',
  'notice',
  'note',
  'gauge',
] as const satisfies readonly RoundEntryKind[];

/** Columns every `rounds/<date>-<ref>.csv` has. */
const requiredColumns = {
  entry: choice(KINDS),
  water: word('the water'),
  peg: matching(PEG_NAME, 'peg-name', "the peg's name", 'Write it as painted on the post.').exactOptional(),
};

/** Columns every round is written with, whether or not a row fills them. */
const usualColumns = (units: Units) => ({
  status: choice(['open', 'closed']).exactOptional(),
  platform: cellText('condition of the platform').exactOptional(),
  hazard: hazardKind().exactOptional(),
  place: cellText('where in the swim').exactOptional(),
  action: cellText('what the angler should do').exactOptional(),
  severity: riskLevel('severity').exactOptional(),
  likelihood: riskLevel('likelihood').exactOptional(),
  ...clearanceColumns(units, true),
  line_distance: named('lineDistanceMetres', length(units, 'distance to below the nearest conductor').exactOptional()),
  level: named('levelMetres', signedLength(units, 'level above datum', 20).exactOptional()),
  water_temperature: named('waterDegreesC', temperature().exactOptional()),
  lat: latitude().exactOptional(),
  lng: longitude().exactOptional(),
  note: cellText('a note').exactOptional(),
});

const METRES: Units = { length: 'm', weight: 'kg' };

/** Columns that are written only where a row fills them. */
const rarerColumns = (units: Units) => ({
  ...clearanceColumns(units, false),
  mapped_as: named('mappedAs', text('id of a path or place on the map').exactOptional()),
  day: day('the day it was seen').exactOptional(),
  by: cellText('the role that walked, never a name').exactOptional(),
  accuracy: named('accuracyMetres', length(METRES, 'how good the position was', 100_000).exactOptional()),
  found_on: named('foundOn', day('the day the hazard had been found').exactOptional()),
  severity_after: named('severityAfter', riskLevel('severity after the control').exactOptional()),
  likelihood_after: named('likelihoodAfter', riskLevel('likelihood after the control').exactOptional()),
  control: cellText('what was done about it').exactOptional(),
  why: cellText('why').exactOptional(),
  until: day('the last day it holds').exactOptional(),
  title: cellText('the title of a notice').exactOptional(),
  kit: choice(['in-place', 'damaged', 'missing']).exactOptional(),
});

/** A row of a bank round. */
export const roundRowSchema = (units: Units) => {
  const table = { ...requiredColumns, ...usualColumns(units), ...rarerColumns(units) };
  const entryOf = recordOf(table);
  return z.object(shapeOf(table)).transform((row): RoundEntry => {
    const { lat, lng, ...entry } = entryOf(row);
    return { ...entry, ...(lat === undefined || lng === undefined ? {} : { at: { lat, lng } }) };
  }) satisfies z.ZodType<RoundEntry>;
};

const namesOf = <Table extends object>(table: Table) => Object.keys(table) as (keyof Table & string)[];

/** Columns every round's file has. */
export const REQUIRED_ROUND_COLUMNS = namesOf(requiredColumns);

/** Those every round is written with, so that rounds of all years look alike. */
export const USUAL_ROUND_COLUMNS = [...REQUIRED_ROUND_COLUMNS, ...namesOf(usualColumns(METRES))];

/** All of them, in the order in which a round is written; one that is not usual is left out where no row fills it. */
export const ROUND_COLUMNS = [...USUAL_ROUND_COLUMNS, ...namesOf(rarerColumns(METRES))];

export type RoundColumn = (typeof ROUND_COLUMNS)[number];
