import * as z from 'zod';
import type { Units } from '../../domain/bag.ts';
import type { RoundEntry, RoundEntryKind } from '../../domain/round.ts';
import { cellText } from './cell-text.ts';
import { PEG_NAME } from './dated-schemas.ts';
import { choice, day, matching, text, word } from './fields.ts';
import { hazardKind } from './hazard-schema.ts';
import { length, riskLevel, signedLength, temperature } from './measures.ts';
import { latitude, longitude } from './position-schema.ts';
import { withoutUndefined } from './without-undefined.ts';

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

/** A row of a bank round. */
export const roundRowSchema = (units: Units) =>
  z
    .object({
      entry: choice(KINDS),
      water: word('the water'),
      peg: matching(PEG_NAME, 'peg-name', "the peg's name", 'Write it as painted on the post.').exactOptional(),
      status: choice(['open', 'closed']).exactOptional(),
      platform: cellText('condition of the platform').exactOptional(),
      hazard: hazardKind().exactOptional(),
      place: cellText('where in the swim').exactOptional(),
      action: cellText('what the angler should do').exactOptional(),
      severity: riskLevel('severity').exactOptional(),
      likelihood: riskLevel('likelihood').exactOptional(),
      clear_width: length(units, 'clear width of the swim', 100).exactOptional(),
      lowest_branch: length(units, 'height of the lowest branch', 50).exactOptional(),
      path_width: length(units, 'clear width of the path', 20).exactOptional(),
      line_distance: length(units, 'distance to below the nearest conductor').exactOptional(),
      level: signedLength(units, 'level above datum', 20).exactOptional(),
      water_temperature: temperature().exactOptional(),
      lat: latitude().exactOptional(),
      lng: longitude().exactOptional(),
      note: cellText('a note').exactOptional(),
      mapped_as: text('id of a path or place on the map').exactOptional(),
      day: day('the day it was seen').exactOptional(),
      by: cellText('the role that walked, never a name').exactOptional(),
      accuracy: length({ length: 'm', weight: 'kg' }, 'how good the position was', 100_000).exactOptional(),
      found_on: day('the day the hazard had been found').exactOptional(),
      severity_after: riskLevel('severity after the control').exactOptional(),
      likelihood_after: riskLevel('likelihood after the control').exactOptional(),
      control: cellText('what was done about it').exactOptional(),
      why: cellText('why').exactOptional(),
      until: day('the last day it holds').exactOptional(),
      title: cellText('the title of a notice').exactOptional(),
      kit: choice(['in-place', 'damaged', 'missing']).exactOptional(),
    })
    .transform((row): RoundEntry => {
      const { lat, lng } = row;
      return withoutUndefined({
        entry: row.entry,
        water: row.water,
        peg: row.peg,
        status: row.status,
        platform: row.platform,
        hazard: row.hazard,
        place: row.place,
        action: row.action,
        severity: row.severity,
        likelihood: row.likelihood,
        clearWidthMetres: row.clear_width,
        lowestBranchMetres: row.lowest_branch,
        pathWidthMetres: row.path_width,
        lineDistanceMetres: row.line_distance,
        levelMetres: row.level,
        waterDegreesC: row.water_temperature,
        at: lat === undefined || lng === undefined ? undefined : { lat, lng },
        note: row.note,
        mappedAs: row.mapped_as,
        day: row.day,
        by: row.by,
        accuracyMetres: row.accuracy,
        foundOn: row.found_on,
        severityAfter: row.severity_after,
        likelihoodAfter: row.likelihood_after,
        control: row.control,
        why: row.why,
        until: row.until,
        title: row.title,
        kit: row.kit,
      });
    }) satisfies z.ZodType<RoundEntry>;
