import * as z from 'zod';
import type { Units } from '../../domain/bag.ts';
import type { Sounding } from '../../domain/venue.ts';
import { PEG_NAME } from './dated-schemas.ts';
import { day, matching } from './fields.ts';
import { bearing, length, signedLength } from './measures.ts';
import { gridReference, latitude, longitude } from './position-schema.ts';
import { withoutUndefined } from './without-undefined.ts';

/** A row of `soundings/<water>.csv`: a position, or a peg with a distance. */
export const soundingRowSchema = (units: Units) =>
  z
    .object({
      lat: latitude().exactOptional(),
      lng: longitude().exactOptional(),
      grid: gridReference().exactOptional(),
      peg: matching(PEG_NAME, 'peg-name', "the peg's name", 'Write it as painted on the post.').exactOptional(),
      distance: length(units, 'distance from the peg', 500).exactOptional(),
      bearing: bearing().exactOptional(),
      depth: length(units, 'the depth', 60),
      date: day(),
      level: signedLength(units, 'level above datum', 20).exactOptional(),
    })
    .meta({ oneOf: [['lat', 'lng'], ['grid'], ['peg', 'distance']].map((required) => ({ required })) })
    .transform((row, context): Omit<Sounding, 'water' | 'file' | 'line'> => {
      const { lat, lng, grid, peg, distance } = row;
      const given = [lat ?? lng, grid, peg ?? distance].filter((value) => value !== undefined);
      const measured = withoutUndefined({ depthMetres: row.depth, day: row.date, levelMetres: row.level });
      if (given.length === 1) {
        if (grid !== undefined) return { at: grid, ...measured };
        if (lat !== undefined && lng !== undefined) return { at: { lat, lng }, ...measured };
        if (peg !== undefined && distance !== undefined) {
          const fromPeg = withoutUndefined({ peg, distanceMetres: distance, bearingDegrees: row.bearing });
          return { fromPeg, ...measured };
        }
      }
      context.addIssue({
        code: 'custom',
        message: 'one place: lat and lng, or grid, or peg and distance',
        params: { rule: 'sounding-place', mend: 'Fill in one of the three and leave the others empty.' },
      });
      return z.NEVER;
    }) satisfies z.ZodType<Omit<Sounding, 'water' | 'file' | 'line'>>;
