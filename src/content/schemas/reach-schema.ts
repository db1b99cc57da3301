import * as z from 'zod';
import type { Units } from '../../domain/bag.ts';
import type { PermittedReach } from '../../domain/peg.ts';
import { number } from './fields.ts';
import { length } from './measures.ts';
import { withoutUndefined } from './without-undefined.ts';

/** How far may be fished: any of pole, cast and sector. */
export const reachSchema = (units: Units) =>
  z
    .strictObject({
      pole: length(units, 'the longest pole', 30).exactOptional(),
      cast: length(units, 'the longest cast', 300).exactOptional(),
      sector: number('the full angle that may be fished, in degrees', 0, 360).exactOptional(),
    })
    .transform(({ pole, cast, sector }) =>
      withoutUndefined({ poleMetres: pole, castMetres: cast, sectorDegrees: sector }),
    ) satisfies z.ZodType<Partial<PermittedReach>>;
