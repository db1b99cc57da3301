import * as z from 'zod';
import type { Units } from '../../domain/bag.ts';
import type { GaugeReading } from '../../domain/venue.ts';
import { day } from './fields.ts';
import { signedLength, temperature } from './measures.ts';
import { withoutUndefined } from './without-undefined.ts';

/** A row of `gauge/<water>.csv`. */
export const gaugeRowSchema = (units: Units) =>
  z
    .object({
      date: day(),
      level: signedLength(units, 'level above datum', 20).exactOptional(),
      water_temperature: temperature().exactOptional(),
    })
    .meta({ anyOf: [{ required: ['level'] }, { required: ['water_temperature'] }] })
    .transform((row, context): Omit<GaugeReading, 'water'> => {
      if (row.level === undefined && row.water_temperature === undefined) {
        context.addIssue({
          code: 'custom',
          message: 'a level, a water temperature or both',
          params: { rule: 'gauge-empty', mend: 'Write what was read, or delete the row.' },
        });
        return z.NEVER;
      }
      return withoutUndefined({ day: row.date, levelMetres: row.level, waterDegreesC: row.water_temperature });
    }) satisfies z.ZodType<Omit<GaugeReading, 'water'>>;
