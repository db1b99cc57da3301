import * as z from 'zod';
import type { Units } from '../../domain/bag.ts';
import type { Water } from '../../domain/map.ts';
import type { FishMoved, LevelChange } from '../../domain/water-history.ts';
import { choice, day, number, text } from './fields.ts';
import { placeHazardSchema } from './hazard-schema.ts';
import { signedLength } from './measures.ts';
import { LinesSurveyedSchema } from './safety-rule-schemas.ts';
import { withoutUndefined } from './without-undefined.ts';

const fishMoved = (word: string) =>
  z
    .strictObject({
      on: day(`the day of the ${word}`),
      what: text('which fish, in words'),
      kg: number('how much, in kilograms', 0, 1_000_000).exactOptional(),
    })
    .transform(({ kg: kilograms, ...rest }) => withoutUndefined({ ...rest, kilograms })) satisfies z.ZodType<FishMoved>;

const levelChangeSchema = (units: Units) =>
  z
    .strictObject({
      on: day('the day from which level zero lies elsewhere'),
      by: signedLength(units, 'how much higher zero lies than before', 20),
      why: text('what was done: boards added to the monk').exactOptional(),
    })
    .transform(({ by: metres, ...rest }) => withoutUndefined({ ...rest, metres })) satisfies z.ZodType<LevelChange>;

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
      stocked: z.array(fishMoved('stocking'), { error: 'a list of stockings' }).exactOptional(),
      netted: z.array(fishMoved('netting'), { error: 'a list of nettings' }).exactOptional(),
      'level-change': z.array(levelChangeSchema(units), { error: 'a list of changes' }).exactOptional(),
      hazards: z.array(placeHazardSchema(units), { error: 'a list of hazards that are at no peg' }).exactOptional(),
    })
    .transform(
      ({ 'close-season': closeSeason, 'lines-surveyed': linesSurveyed, 'level-change': levelChanges, ...rest }) =>
        withoutUndefined({ ...rest, closeSeason: closeSeason ?? 'unknown', linesSurveyed, levelChanges }),
    ) satisfies z.ZodType<Omit<Water, 'id' | 'notesMarkdown' | 'map'>>;
