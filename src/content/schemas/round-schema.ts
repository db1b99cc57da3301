import * as z from 'zod';
import type { Units } from '../../domain/bag.ts';
import type { RoundEntry, RoundEntryKind } from '../../domain/round.ts';
import { choice, matching, text, word } from './fields.ts';
import { hazardKind } from './hazard-schema.ts';
import { length, riskLevel, signedLength, temperature } from './measures.ts';
import { PEG_NAME } from './peg-schema.ts';
import { latitude, longitude } from './position-schema.ts';
import { withoutUndefined } from './without-undefined.ts';

const KINDS = [
  'visit',
  'hazard-found',
  'hazard-checked',
  'hazard-cleared',
  'clearance',
  'snag-removed',
  'cut',
  'line-distance',
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
      platform: text('condition of the platform').exactOptional(),
      hazard: hazardKind().exactOptional(),
      place: text('where in the swim').exactOptional(),
      action: text('what the angler should do').exactOptional(),
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
      note: text('a note').exactOptional(),
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
      });
    }) satisfies z.ZodType<RoundEntry>;
