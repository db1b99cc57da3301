import * as z from 'zod';
import type { Hazard } from '../../domain/hazard.ts';
import { HAZARD_KINDS } from '../../domain/hazard-kinds.ts';
import { choice, day, text } from './fields.ts';
import { riskLevel } from './measures.ts';
import { withoutUndefined } from './without-undefined.ts';

/** Every kind of hazard a record may name. */
export const hazardKind = () => choice(HAZARD_KINDS.map(({ id }) => id) as [string, ...string[]]);

/** A hazard of a peg record. */
export const hazardSchema = z
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
    }),
  ) satisfies z.ZodType<Hazard>;
