import * as z from 'zod';
import type { Units } from '../../domain/bag.ts';
import type { DatedFeature } from '../../domain/peg.ts';
import type { FormerNumber, Move, Retirement } from '../../domain/stand.ts';
import { day, matching, text, word, yesNo } from './fields.ts';
import { bearing, length } from './measures.ts';
import { PositionSchema } from './position-schema.ts';
import { withoutUndefined } from './without-undefined.ts';

/** A peg's name as painted on its post. */
export const PEG_NAME = /^[A-Za-z0-9][A-Za-z0-9-]{0,39}$/;

/** The days on which a fact holds, as fields of its record. */
export const datedFields = () => ({
  from: day('the first day of it').exactOptional(),
  until: day('the last day of it').exactOptional(),
});

/** A feature a peg has: its word alone, or with the days on which it was there. */
export const FeatureEntrySchema = z.union([
  word('a feature of venue.md').transform((id): DatedFeature => ({ id })),
  z
    .strictObject({ id: word('a feature of venue.md'), ...datedFields() })
    .transform((feature): DatedFeature => withoutUndefined(feature)),
]);

/** An id of a stand: never a number alone, which would pass for one that is painted. */
export const standIdField = () =>
  matching(
    /^(?=.*[a-z])[a-z0-9]+(?:-[a-z0-9]+)+$/,
    'stand-id',
    "the stand's id: small letters, digits and hyphens, such as s-7k2q04xv",
    'Write it with a hyphen and a letter in it; it never changes, so it should not be a number.',
  );

/** A number that a stand carried before. */
export const FormerNumberSchema = z
  .strictObject({
    peg: matching(PEG_NAME, 'peg-name', "the peg's name", 'Write it as it was painted on the post: 23 or 14a.'),
    water: word('its water, where it is written at all').exactOptional(),
    from: day('the first day of it').exactOptional(),
    until: day('the last day on which the post carried it'),
  })
  .transform(({ water: _, ...number }) => withoutUndefined(number)) satisfies z.ZodType<FormerNumber>;

/** A move of a platform. */
export const moveSchema = (units: Units) =>
  z
    .strictObject({
      on: day('the first day at its new place'),
      metres: length({ ...units, length: 'm' }, 'how far it was moved', 500),
      'new-ground': yesNo('whether it fishes into another piece of water since').exactOptional(),
      'was-at': PositionSchema.exactOptional(),
      'was-facing': bearing().exactOptional(),
    })
    .transform((move) =>
      withoutUndefined({
        on: move.on,
        metres: move.metres,
        newGround: move['new-ground'] ?? false,
        wasAt: move['was-at'],
        wasFacingDegrees: move['was-facing'],
      }),
    ) satisfies z.ZodType<Move>;

/** When and why a stand left the guide. */
export const RetirementSchema = z
  .strictObject(
    {
      from: day('the first day on which nobody could fish it'),
      why: text('why it is no longer fished').exactOptional(),
    },
    { error: 'since when it is no longer fished, as { from: 2026-02-01, why: … }' },
  )
  .transform((retirement) => withoutUndefined(retirement)) satisfies z.ZodType<Retirement>;
