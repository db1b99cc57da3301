import * as z from 'zod';
import { parsed, unreadable } from '../../domain/parsed.ts';
import type { LatLng } from '../../domain/place.ts';
import { GRID_REFERENCE_FORM, parseGridReference } from '../../ground/national-grid.ts';
import { fieldOf, yesNo } from './fields.ts';
import { schemaPattern } from './schema-pattern.ts';

const DEGREES = /^[-−+]?\d{1,3}(?:\.\d+)?$/;

/** Latitude in decimal degrees, north positive. */
export const latitude = () => degrees('latitude', 90);

/** Longitude in decimal degrees, east positive: most of Great Britain lies west and is negative. */
export const longitude = () => degrees('longitude', 180);

function degrees(name: 'latitude' | 'longitude', most: number) {
  const expected = `decimal degrees from −${most} to ${most}`;
  return fieldOf(
    (written) => {
      const value = DEGREES.test(written) ? Number(written.replace('−', '-')) : Number.NaN;
      if (Math.abs(value) <= most) return parsed(value);
      const mend = Number.isNaN(value)
        ? 'Write decimal degrees, west and south with a minus sign: 52.75126 or -0.05481.'
        : 'Correct it; latitude and longitude may be swapped.';
      return unreadable(name, expected, mend);
    },
    { description: `${name}: ${expected}`, type: 'number', minimum: -most, maximum: most },
  );
}

/** An OS grid reference with 4 to 10 figures; the middle of the square it names. */
export const gridReference = () =>
  fieldOf<LatLng>(
    (written) => {
      const position = parseGridReference(written.toUpperCase());
      if (position !== null) return parsed(position);
      return unreadable(
        'grid-reference',
        'two letters and an even number of figures, such as TF 3127 1880',
        'Look the reference up again; its letters must name a square with land of Great Britain.',
      );
    },
    { description: 'an OS grid reference such as TF 3127 1880', pattern: schemaPattern([GRID_REFERENCE_FORM]) },
  );

interface WrittenPosition {
  readonly lat?: number;
  readonly lng?: number;
  readonly grid?: LatLng;
}

function onePosition({ lat, lng, grid }: WrittenPosition, context: z.core.$RefinementCtx): LatLng {
  if (grid !== undefined && lat === undefined && lng === undefined) return grid;
  if (grid === undefined && lat !== undefined && lng !== undefined) return { lat, lng };
  context.addIssue({
    code: 'custom',
    message: 'either lat and lng, or grid',
    params: { rule: 'position', mend: 'Give latitude and longitude both, or a grid reference alone.' },
  });
  return z.NEVER;
}

/** For editors: which fields go together. */
const ONE_POSITION = {
  oneOf: [
    { required: ['lat', 'lng'], not: { required: ['grid'] } },
    { required: ['grid'], not: { anyOf: [{ required: ['lat'] }, { required: ['lng'] }] } },
  ],
};

/** `{ lat, lng }` or `{ grid }`. */
export const PositionSchema = z
  .strictObject(
    {
      lat: latitude().exactOptional(),
      lng: longitude().exactOptional(),
      grid: gridReference().exactOptional(),
    },
    { error: 'a position as { lat: 52.75126, lng: -0.05481 } or { grid: TF 3127 1880 }' },
  )
  .meta(ONE_POSITION)
  .transform(onePosition) satisfies z.ZodType<LatLng>;

/** Where a peg stands; one that nobody has measured yet says so, and a guide of a real venue is not built with it. */
export const PegPositionSchema = z
  .strictObject(
    {
      lat: latitude().exactOptional(),
      lng: longitude().exactOptional(),
      grid: gridReference().exactOptional(),
      placeholder: yesNo('whether this only stands in for a position nobody has measured yet').exactOptional(),
    },
    { error: 'a position as { lat: 52.75126, lng: -0.05481 } or { grid: TF 3127 1880 }' },
  )
  .meta(ONE_POSITION)
  .transform(({ placeholder: _told, ...position }, context) =>
    onePosition(position, context),
  ) satisfies z.ZodType<LatLng>;
