import * as z from 'zod';
import type { Units } from '../../domain/bag.ts';
import type { Hazard, PlaceHazard } from '../../domain/hazard.ts';
import { HAZARD_KINDS } from '../../domain/hazard-kinds.ts';
import type { KeptOpen } from '../../domain/peg-verdict.ts';
import { choice, day, text } from './fields.ts';
import { bearing, length, riskLevel } from './measures.ts';
import { named, recordSchema } from './record-schema.ts';

/** Every kind of hazard a record may name. */
export const hazardKind = () => choice(HAZARD_KINDS.map(({ id }) => id) as [string, ...string[]]);

/** Who decided that a peg stays in the draw in spite of a hazard that closes it. */
export const KeptOpenSchema = z.strictObject(
  {
    on: day('the day it was decided'),
    by: text('the role that decided, never a name: Secretary'),
    why: text('why the peg stays in the draw'),
  },
  { error: 'who decided, as { on: 2026-11-21, by: Secretary, why: … }' },
) satisfies z.ZodType<KeptOpen>;

/** The fields of a hazard as a record writes them, in their order. A bare length is in the venue's unit. */
const hazardFields = (units: Units) => ({
  kind: hazardKind(),
  place: text('where in the swim'),
  action: text('what the angler should do').exactOptional(),
  control: text('what the club has done').exactOptional(),
  severity: riskLevel('severity'),
  likelihood: riskLevel('likelihood'),
  'severity-after': named('severityAfter', riskLevel('severity after the control').exactOptional()),
  'likelihood-after': named('likelihoodAfter', riskLevel('likelihood after the control').exactOptional()),
  'found-on': named('foundOn', day()),
  'found-by': named('foundBy', text('the role that found it, never a name').exactOptional()),
  'checked-on': named('checkedOn', day().exactOptional()),
  'worsened-on': named('worsenedOn', day('the day it was found worse').exactOptional()),
  'controlled-on': named('controlledOn', day('the day the control was put in place').exactOptional()),
  'cleared-on': named('clearedOn', day().exactOptional()),
  'cleared-by': named('clearedBy', text('the role that decided that it is cleared, never a name').exactOptional()),
  'cleared-why': named('clearedWhy', text('why it is cleared').exactOptional()),
  'cleared-photo': named('clearedPhoto', text('picture below photos/ that shows it cleared').exactOptional()),
  round: text('the bank round that found it').exactOptional(),
  photo: text('its picture below photos/').exactOptional(),
  line: text('of an overhead line: its name or id on the map').exactOptional(),
  distance: named(
    'distanceMetres',
    length(units, 'of an overhead line: from the platform to below its nearest wire').exactOptional(),
  ),
  bearing: named('bearingDegrees', bearing().exactOptional()),
  'kept-open': named('keptOpen', KeptOpenSchema.exactOptional()),
});

/** A hazard of a peg record. */
export const hazardSchema = (units: Units) => recordSchema(hazardFields(units)) satisfies z.ZodType<Hazard>;

/** A hazard of a water's record: at no peg. */
export const placeHazardSchema = (units: Units) => {
  const { kind, place, ...rest } = hazardFields(units);
  const mappedAs = text('id of the path, gate or place on the map; left out for the whole water').exactOptional();
  return recordSchema({
    kind,
    place,
    'mapped-as': named('mappedAs', mappedAs),
    ...rest,
  }) satisfies z.ZodType<PlaceHazard>;
};
