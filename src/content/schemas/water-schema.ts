import * as z from 'zod';
import type { Units } from '../../domain/bag.ts';
import type { Water } from '../../domain/map.ts';
import { choice, text } from './fields.ts';
import { placeHazardSchema } from './hazard-schema.ts';
import { LinesSurveyedSchema } from './safety-rule-schemas.ts';
import { withoutUndefined } from './without-undefined.ts';

/** The front matter of `waters/<water>.md`. A bare length is in the venue's unit. */
export const waterSchema = (units: Units) =>
  z
    .strictObject({
      name: text('the name of the water'),
      kind: text('its kind in words: snaky pit, clay pit, match lake'),
      datum: text('what level zero is: top of the monk sill'),
      'close-season': choice(['none', 'statutory', 'club', 'unknown']).exactOptional(),
      access: text('one line on how to get there').exactOptional(),
      'lines-surveyed': LinesSurveyedSchema.exactOptional(),
      hazards: z.array(placeHazardSchema(units), { error: 'a list of hazards that are at no peg' }).exactOptional(),
    })
    .transform(({ 'close-season': closeSeason, 'lines-surveyed': linesSurveyed, ...rest }) =>
      withoutUndefined({ ...rest, closeSeason: closeSeason ?? 'unknown', linesSurveyed }),
    ) satisfies z.ZodType<Omit<Water, 'id' | 'notesMarkdown' | 'map'>>;
