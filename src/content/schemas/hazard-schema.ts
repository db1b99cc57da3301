import * as z from 'zod';
import type { Units } from '../../domain/bag.ts';
import type { Hazard } from '../../domain/hazard.ts';
import { HAZARD_KINDS } from '../../domain/hazard-kinds.ts';
import type { KeptOpen } from '../../domain/peg-verdict.ts';
import { choice, day, text } from './fields.ts';
import { bearing, length, riskLevel } from './measures.ts';
import { withoutUndefined } from './without-undefined.ts';

/** Every kind of hazard a record may name. */
export const hazardKind = () => choice(HAZARD_KINDS.map(({ id }) => id) as [string, ...string[]]);

/** Who decided that a peg stays in the draw in spite of a hazard that closes it. */
const KeptOpenSchema = z.strictObject(
  {
    on: day('the day it was decided'),
    by: text('the role that decided, never a name: Secretary'),
    why: text('why the peg stays in the draw'),
  },
  { error: 'who decided, as { on: 2026-11-21, by: Secretary, why: … }' },
) satisfies z.ZodType<KeptOpen>;

/** A hazard of a peg record. A bare length is in the venue's unit. */
export const hazardSchema = (units: Units) =>
  z
    .strictObject({
      kind: hazardKind(),
      place: text('where in the swim'),
      action: text('what the angler should do').exactOptional(),
      control: text('what the club has done').exactOptional(),
      severity: riskLevel('severity'),
      likelihood: riskLevel('likelihood'),
      'severity-after': riskLevel('severity after the control').exactOptional(),
      'likelihood-after': riskLevel('likelihood after the control').exactOptional(),
      'found-on': day(),
      'checked-on': day().exactOptional(),
      'cleared-on': day().exactOptional(),
      round: text('the bank round that found it').exactOptional(),
      photo: text('its picture below photos/').exactOptional(),
      line: text('of an overhead line: its name or id on the map').exactOptional(),
      distance: length(units, 'of an overhead line: from the platform to below its nearest wire').exactOptional(),
      bearing: bearing().exactOptional(),
      'kept-open': KeptOpenSchema.exactOptional(),
    })
    .transform((hazard) =>
      withoutUndefined({
        kind: hazard.kind,
        place: hazard.place,
        action: hazard.action,
        control: hazard.control,
        severity: hazard.severity,
        likelihood: hazard.likelihood,
        severityAfter: hazard['severity-after'],
        likelihoodAfter: hazard['likelihood-after'],
        foundOn: hazard['found-on'],
        checkedOn: hazard['checked-on'],
        clearedOn: hazard['cleared-on'],
        round: hazard.round,
        photo: hazard.photo,
        line: hazard.line,
        distanceMetres: hazard.distance,
        bearingDegrees: hazard.bearing,
        keptOpen: hazard['kept-open'],
      }),
    ) satisfies z.ZodType<Hazard>;
