import * as z from 'zod';
import type { Units } from '../../domain/bag.ts';
import type { Hazard, PlaceHazard } from '../../domain/hazard.ts';
import { HAZARD_KINDS } from '../../domain/hazard-kinds.ts';
import type { KeptOpen } from '../../domain/peg-verdict.ts';
import { choice, day, text } from './fields.ts';
import { bearing, length, riskLevel } from './measures.ts';
import { withoutUndefined } from './without-undefined.ts';

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

/** The fields of a hazard as a record writes them. A bare length is in the venue's unit. */
const hazardFields = (units: Units) =>
  z.strictObject({
    kind: hazardKind(),
    place: text('where in the swim'),
    action: text('what the angler should do').exactOptional(),
    control: text('what the club has done').exactOptional(),
    severity: riskLevel('severity'),
    likelihood: riskLevel('likelihood'),
    'severity-after': riskLevel('severity after the control').exactOptional(),
    'likelihood-after': riskLevel('likelihood after the control').exactOptional(),
    'found-on': day(),
    'found-by': text('the role that found it, never a name').exactOptional(),
    'checked-on': day().exactOptional(),
    'worsened-on': day('the day it was found worse').exactOptional(),
    'controlled-on': day('the day the control was put in place').exactOptional(),
    'cleared-on': day().exactOptional(),
    'cleared-by': text('the role that decided that it is cleared, never a name').exactOptional(),
    'cleared-why': text('why it is cleared').exactOptional(),
    'cleared-photo': text('picture below photos/ that shows it cleared').exactOptional(),
    round: text('the bank round that found it').exactOptional(),
    photo: text('its picture below photos/').exactOptional(),
    line: text('of an overhead line: its name or id on the map').exactOptional(),
    distance: length(units, 'of an overhead line: from the platform to below its nearest wire').exactOptional(),
    bearing: bearing().exactOptional(),
    'kept-open': KeptOpenSchema.exactOptional(),
  });

/** A hazard of a peg record. */
export const hazardSchema = (units: Units) => hazardFields(units).transform(hazardOf) satisfies z.ZodType<Hazard>;

/** A hazard of a water's record: at no peg. */
export const placeHazardSchema = (units: Units) =>
  hazardFields(units)
    .extend({
      'mapped-as': text('id of the path, gate or place on the map; left out for the whole water').exactOptional(),
    })
    .transform(({ 'mapped-as': mappedAs, ...hazard }) =>
      withoutUndefined({ ...hazardOf(hazard), mappedAs }),
    ) satisfies z.ZodType<PlaceHazard>;

function hazardOf(hazard: z.infer<ReturnType<typeof hazardFields>>): Hazard {
  return withoutUndefined({
    kind: hazard.kind,
    place: hazard.place,
    action: hazard.action,
    control: hazard.control,
    severity: hazard.severity,
    likelihood: hazard.likelihood,
    severityAfter: hazard['severity-after'],
    likelihoodAfter: hazard['likelihood-after'],
    foundOn: hazard['found-on'],
    foundBy: hazard['found-by'],
    checkedOn: hazard['checked-on'],
    worsenedOn: hazard['worsened-on'],
    controlledOn: hazard['controlled-on'],
    clearedOn: hazard['cleared-on'],
    clearedBy: hazard['cleared-by'],
    clearedWhy: hazard['cleared-why'],
    clearedPhoto: hazard['cleared-photo'],
    round: hazard.round,
    photo: hazard.photo,
    line: hazard.line,
    distanceMetres: hazard.distance,
    bearingDegrees: hazard.bearing,
    keptOpen: hazard['kept-open'],
  });
}
