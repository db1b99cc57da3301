import * as z from 'zod';
import type { AreaKind, PlaceKind } from '../../domain/map.ts';
import type { LatLng, Ring } from '../../domain/place.ts';
import { normalRing } from '../../domain/ring.ts';
import { GRADIENT_FORMS, parseGradient } from '../../domain/slope.ts';
import { day, fieldOf } from './fields.ts';
import { schemaPattern } from './schema-pattern.ts';

/** Places that say no more of themselves than a name and a note; a gate says more. */
export const PLACE_KINDS = [
  'car-park',
  'aed',
  'throw-line',
  'lodge',
  'toilet',
  'aerator',
  'inlet',
  'outlet',
  'gauge',
] as const satisfies readonly Exclude<PlaceKind, 'gate'>[];

export const AREA_KINDS = ['reeds', 'lilies', 'trees', 'snag', 'building'] as const satisfies readonly AreaKind[];

const POSITION = 'a position as [longitude, latitude]';

/** RFC 7946, section 3.1.1: longitude first, on WGS 84; a height is allowed and not used. */
const PositionSchema = z
  .array(z.number({ error: POSITION }), { error: POSITION })
  .transform((numbers, context): LatLng => {
    const [lng, lat] = numbers;
    if (numbers.length > 3) {
      // RFC 7946 allows a height and no more: four numbers are two written with decimal commas.
      const mend = 'Write the decimal point as a point, not a comma: [-0.05481, 52.75126].';
      context.addIssue({ code: 'custom', message: POSITION, params: { rule: 'decimal-comma', mend } });
      return z.NEVER;
    }
    if (lng !== undefined && lat !== undefined && Math.abs(lng) <= 180 && Math.abs(lat) <= 90) return { lat, lng };
    const mend =
      lng === undefined || lat === undefined || Math.abs(lng) > 180
        ? 'Export the map in longitude and latitude on WGS 84, in degrees.'
        : 'Longitude comes first in GeoJSON: they may be swapped.';
    context.addIssue({ code: 'custom', message: `${POSITION} in degrees`, params: { rule: 'map-position', mend } });
    return z.NEVER;
  });

const LineSchema = z.array(PositionSchema, { error: 'a list of positions' }).superRefine((line, context) => {
  if (line.length >= 2) return;
  const mend = 'Draw the line with two points or more.';
  context.addIssue({ code: 'custom', message: 'at least two positions', params: { rule: 'line-short', mend } });
});

/** A linear ring (RFC 7946, section 3.1.6), without the repeated position at its end; whichever way it was drawn, it is read anticlockwise. */
const RingSchema = z.array(PositionSchema, { error: 'a list of positions' }).transform((positions, context): Ring => {
  const refuse = (message: string, rule: string, mend: string) => {
    context.addIssue({ code: 'custom', message, params: { rule, mend } });
    return z.NEVER;
  };
  const [first, last] = [positions[0], positions.at(-1)];
  if (first === undefined || last === undefined || positions.length < 4) {
    return refuse(
      'at least four positions, the last equal to the first',
      'ring-short',
      'Draw the shape with three corners or more.',
    );
  }
  if (first.lat !== last.lat || first.lng !== last.lng) {
    return refuse(
      'a closed ring: the last position equal to the first',
      'ring-open',
      'Repeat the first position at the end of the ring.',
    );
  }
  const ring = normalRing(positions);
  if (ring.length >= 3) return ring;
  return refuse('three corners apart from one another', 'ring-short', 'Draw the shape with three corners or more.');
});

const words = (description: string) => z.string({ error: description }).min(1, { error: description }).exactOptional();
const size = (description: string, most: number) =>
  z.number({ error: description }).min(0, { error: description }).max(most, { error: description }).exactOptional();
const flag = () => z.boolean({ error: 'true or false' }).exactOptional();

/** A GeoJSON feature of one kind. Members the standard does not name are allowed and not read; its properties are ours. */
function feature<K extends string, P extends z.core.$ZodLooseShape, C extends z.ZodType>(
  kind: K,
  properties: P,
  geometry: 'Point' | 'LineString' | 'Polygon',
  coordinates: C,
) {
  const type = z.literal(geometry, {
    error: `${geometry}, one ${geometry === 'LineString' ? 'line' : geometry === 'Point' ? 'point' : 'shape'} a feature`,
  });
  return z.looseObject({
    type: z.literal('Feature', { error: 'Feature' }),
    id: z.union([z.string(), z.number()], { error: 'a word or number' }).exactOptional(),
    properties: z.strictObject({ kind: z.literal(kind), ...properties }),
    geometry: z.looseObject({ type, coordinates }, { error: `a ${geometry}` }),
  });
}

const PolygonSchema = z.array(RingSchema, { error: 'a list of rings' }).superRefine((rings, context) => {
  if (rings.length > 0) return;
  context.addIssue({ code: 'custom', message: 'a ring', params: { rule: 'ring-short', mend: 'Draw the shape.' } });
});

const gradient = () =>
  fieldOf(parseGradient, {
    description: 'a gradient such as 1 in 20',
    pattern: schemaPattern(GRADIENT_FORMS),
  }).exactOptional();

export const OutlineSchema = feature('outline', { name: words('a name') }, 'Polygon', PolygonSchema);
export const IslandSchema = feature('island', { name: words('a name') }, 'Polygon', PolygonSchema);
export const OverheadLineSchema = feature(
  'overhead-line',
  {
    name: words('a name'),
    voltage_kv: size('kilovolts, such as 11', 1500),
    height_m: size('metres above the ground', 200),
    conductor_spread_m: size('metres between the outermost conductors', 50),
  },
  'LineString',
  LineSchema,
);
export const PathSchema = feature(
  'path',
  {
    name: words('a name'),
    surface: words('its surface'),
    width_m: size('metres', 50),
    steps: size('a number of steps', 2000),
    gradient: gradient(),
    step_free: flag(),
  },
  'LineString',
  LineSchema,
);
const placeProperties = () => ({ name: words('a name'), note: words('a note'), checked_on: day().exactOptional() });

export const GateSchema = feature(
  'gate',
  {
    ...placeProperties(),
    vehicles: flag(),
    locked: z.enum(['no', 'night', 'always'], { error: 'one of no, night, always' }).exactOptional(),
    opened_by: words('a role of the contacts in venue.md, never a name'),
    ambulance: flag(),
    hours: words('opening hours'),
  },
  'Point',
  PositionSchema,
);
export const placeSchema = (kind: Exclude<PlaceKind, 'gate'>) =>
  feature(kind, placeProperties(), 'Point', PositionSchema);
export const areaSchema = (kind: AreaKind) => feature(kind, { name: words('a name') }, 'Polygon', PolygonSchema);

/** The whole file, for editors. The reader goes feature by feature, so that each fault names its kind's own fields. */
export const WaterMapSchema = z.looseObject({
  type: z.literal('FeatureCollection', { error: 'FeatureCollection' }),
  features: z.array(
    z.union([
      OutlineSchema,
      IslandSchema,
      OverheadLineSchema,
      PathSchema,
      GateSchema,
      ...PLACE_KINDS.map(placeSchema),
      ...AREA_KINDS.map(areaSchema),
    ]),
  ),
});

/** Every kind a feature may have. */
export const MAP_KINDS = ['outline', 'island', 'overhead-line', 'path', 'gate', ...PLACE_KINDS, ...AREA_KINDS] as const;
