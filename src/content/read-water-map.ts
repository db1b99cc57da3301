import * as z from 'zod';
import type { AreaKind, MapArea, MapPath, MapPlace, OverheadLine, PlaceKind, WaterMap } from '../domain/map.ts';
import type { Ring } from '../domain/place.ts';
import type { PlacedMap } from './content.ts';
import { didYouMean, listed } from './did-you-mean.ts';
import type { Fault } from './fault.ts';
import { type Reading, reading } from './reading.ts';
import { readFields } from './schemas/read-fields.ts';
import {
  AREA_KINDS,
  areaSchema,
  GateSchema,
  IslandSchema,
  MAP_KINDS,
  OutlineSchema,
  OverheadLineSchema,
  PathSchema,
  PLACE_KINDS,
  placeSchema,
} from './schemas/water-map-schema.ts';
import { withoutUndefined } from './schemas/without-undefined.ts';
import { type JsonSource, readJson } from './sources/json-source.ts';
import { type FieldPath, faultAt, faultOfFile } from './sources/source.ts';
import { shown } from './sources/text-place.ts';

const CollectionSchema = z.looseObject({
  type: z.literal('FeatureCollection', { error: 'FeatureCollection' }),
  features: z.array(z.unknown(), { error: 'a list of features' }),
});

/** Names given to places that have none of their own. */
const PLACE_NAMES: Readonly<Record<PlaceKind, string>> = {
  'car-park': 'Car park',
  gate: 'Gate',
  aed: 'AED',
  'throw-line': 'Throw line',
  lodge: 'Lodge',
  toilet: 'Toilet',
  aerator: 'Aerator',
  inlet: 'Inlet',
  outlet: 'Outlet',
  gauge: 'Gauge',
};

type Mutable<T> = { -readonly [K in keyof T]: T[K] };

/** A map being read: what has been drawn on it so far. */
interface Sheet {
  outline: Ring | null;
  readonly islands: Mutable<WaterMap['islands'][number]>[];
  readonly overheadLines: OverheadLine[];
  readonly paths: MapPath[];
  readonly places: MapPlace[];
  readonly areas: MapArea[];
  readonly pathByThing: Map<object, FieldPath>;
  readonly ids: Map<string, FieldPath>;
  readonly faults: Fault[];
  readonly source: JsonSource;
}

/** Reads `waters/<water>.geojson`. The map is null where it has no outline that can be read. */
export function readWaterMap(file: string, text: string): Reading<PlacedMap | null> {
  const { source, faults } = readJson(file, text);
  if (source === null) return reading(null, faults);
  const collection = readFields(CollectionSchema, source.value, source);
  if (collection.value === null) return reading(null, collection.faults);
  const sheet: Sheet = {
    outline: null,
    islands: [],
    overheadLines: [],
    paths: [],
    places: [],
    areas: [],
    pathByThing: new Map(),
    ids: new Map(),
    faults: [...systemFaults(collection.value, source)],
    source,
  };
  collection.value.features.forEach((feature, index) => {
    draw(sheet, feature, ['features', index]);
  });
  const { outline, islands, overheadLines, paths, places, areas } = sheet;
  if (outline === null) return reading(null, [...sheet.faults, ...missingOutline(file, sheet.faults)]);
  const map = { outline, islands, overheadLines, paths, places, areas };
  return reading({ map, source, pathOf: (thing) => sheet.pathByThing.get(thing) ?? [] }, sheet.faults);
}

function draw(sheet: Sheet, feature: unknown, path: FieldPath): void {
  const withoutNulls = dropNulls(feature);
  const kind = kindOf(withoutNulls);
  if (!(MAP_KINDS as readonly (string | undefined)[]).includes(kind)) {
    sheet.faults.push(unknownKind(sheet.source, path, kind));
    return;
  }
  if (kind === 'outline') drawOutline(sheet, withoutNulls, path);
  else if (kind === 'island') drawIsland(sheet, withoutNulls, path);
  else if (kind === 'overhead-line') drawOverheadLine(sheet, withoutNulls, path);
  else if (kind === 'path') drawPath(sheet, withoutNulls, path);
  else if ((AREA_KINDS as readonly (string | undefined)[]).includes(kind)) {
    drawArea(sheet, kind as AreaKind, withoutNulls, path);
  } else drawPlace(sheet, kind as PlaceKind, withoutNulls, path);
}

function drawOutline(sheet: Sheet, feature: unknown, path: FieldPath): void {
  const read = readFeature(sheet, OutlineSchema, feature, path);
  if (read === null) return;
  if (sheet.outline !== null) {
    sheet.faults.push(secondOutline(sheet.source, path));
    return;
  }
  const [shore, ...holes] = read.geometry.coordinates;
  sheet.outline = shore as Ring;
  place(sheet, shore as Ring, path);
  holes.forEach((ring, index) => {
    const island = { id: `hole-${index + 1}`, ring };
    sheet.islands.push(island);
    place(sheet, island, [...path, 'geometry', 'coordinates', index + 1]);
  });
}

function drawIsland(sheet: Sheet, feature: unknown, path: FieldPath): void {
  const read = readFeature(sheet, IslandSchema, feature, path);
  if (read === null) return;
  const ring = read.geometry.coordinates[0] as Ring;
  const island = withoutUndefined({
    id: idOf(sheet, read, path, sheet.islands.length),
    name: read.properties.name,
    ring,
  });
  sheet.islands.push(island);
  place(sheet, island, path);
}

function drawOverheadLine(sheet: Sheet, feature: unknown, path: FieldPath): void {
  const read = readFeature(sheet, OverheadLineSchema, feature, path);
  if (read === null) return;
  const { name, voltage_kv, height_m, conductor_spread_m } = read.properties;
  const line: OverheadLine = withoutUndefined({
    id: idOf(sheet, read, path, sheet.overheadLines.length),
    name: name ?? 'Overhead line',
    line: read.geometry.coordinates,
    voltageVolts: voltage_kv === undefined ? undefined : Math.round(voltage_kv * 1000),
    heightMetres: height_m,
    conductorSpreadMetres: conductor_spread_m,
  });
  sheet.overheadLines.push(line);
  place(sheet, line, path);
}

function drawPath(sheet: Sheet, feature: unknown, path: FieldPath): void {
  const read = readFeature(sheet, PathSchema, feature, path);
  if (read === null) return;
  const { width_m, step_free, ...rest } = read.properties;
  const walk: MapPath = withoutUndefined({
    id: idOf(sheet, read, path, sheet.paths.length),
    name: rest.name,
    line: read.geometry.coordinates,
    surface: rest.surface,
    widthMetres: width_m,
    steps: rest.steps,
    gradient: rest.gradient,
    stepFree: step_free,
  });
  sheet.paths.push(walk);
  place(sheet, walk, path);
}

function drawPlace(sheet: Sheet, kind: PlaceKind, feature: unknown, path: FieldPath): void {
  const read =
    kind === 'gate'
      ? readFeature(sheet, GateSchema, feature, path)
      : readFeature(sheet, PLACE_SCHEMAS[kind], feature, path);
  if (read === null) return;
  const { name, note, checked_on } = read.properties;
  const ofKind = sheet.places.filter((other) => other.kind === kind).length;
  const spot: MapPlace = withoutUndefined({
    id: idOf(sheet, read, path, ofKind),
    kind,
    name: name ?? PLACE_NAMES[kind],
    at: read.geometry.coordinates,
    note,
    checkedOn: checked_on,
    vehicles: 'vehicles' in read.properties ? read.properties.vehicles : undefined,
  });
  sheet.places.push(spot);
  place(sheet, spot, path);
}

function drawArea(sheet: Sheet, kind: AreaKind, feature: unknown, path: FieldPath): void {
  const read = readFeature(sheet, AREA_SCHEMAS[kind], feature, path);
  if (read === null) return;
  const ofKind = sheet.areas.filter((other) => other.kind === kind).length;
  const ring = read.geometry.coordinates[0] as Ring;
  const area: MapArea = withoutUndefined({
    id: idOf(sheet, read, path, ofKind),
    kind,
    name: read.properties.name,
    ring,
  });
  sheet.areas.push(area);
  place(sheet, area, path);
}

const PLACE_SCHEMAS = Object.fromEntries(PLACE_KINDS.map((kind) => [kind, placeSchema(kind)])) as Record<
  Exclude<PlaceKind, 'gate'>,
  ReturnType<typeof placeSchema>
>;
const AREA_SCHEMAS = Object.fromEntries(AREA_KINDS.map((kind) => [kind, areaSchema(kind)])) as Record<
  AreaKind,
  ReturnType<typeof areaSchema>
>;

function readFeature<T>(sheet: Sheet, schema: z.ZodType<T>, feature: unknown, path: FieldPath): T | null {
  const read = readFields(schema, feature, within(sheet.source, path));
  const faults = read.faults.map((fault) => ({ ...fault, field: nameInFeature(fault.field) }));
  // The coordinates of another shape are wrong for this one, all of them: the shape says it.
  const isOtherShape = faults.some(({ field }) => field === 'geometry.type');
  sheet.faults.push(...faults.filter(({ field }) => !isOtherShape || field !== 'coordinates'));
  return read.value;
}

/** A feature as a source of its own: paths inside it start at it. */
function within(source: JsonSource, path: FieldPath): JsonSource {
  return {
    ...source,
    placeOf: (inner) => source.placeOf([...path, ...inner]),
    nameplaceOf: (inner) => source.nameplaceOf([...path, ...inner]),
    writtenAt: (inner) => source.writtenAt([...path, ...inner]),
  };
}

/** Writers know their properties by name, and nobody counts coordinates. */
function nameInFeature(field: string): string {
  return field.replace(/^properties\./, '').replace(/^geometry\.coordinates.*/, 'coordinates');
}

function place(sheet: Sheet, thing: object, path: FieldPath): void {
  sheet.pathByThing.set(thing, path);
}

/** The feature's own id, or its kind and number. */
function idOf(
  sheet: Sheet,
  feature: { readonly id?: string | number; readonly properties: { readonly kind: string } },
  path: FieldPath,
  before: number,
): string {
  const id = feature.id === undefined ? `${feature.properties.kind}-${before + 1}` : String(feature.id);
  const first = sheet.ids.get(id);
  if (first === undefined) sheet.ids.set(id, path);
  else {
    sheet.faults.push({
      ...faultAt(sheet.source, [...path, 'id'], {
        rule: 'map-id',
        found: `the id ${shown(id)} a second time`,
        expected: `an id of its own; the first is in line ${sheet.source.placeOf(first).line}`,
        mend: 'Change one of the two, or leave ids out.',
      }),
      field: 'id',
    });
  }
  return id;
}

function kindOf(feature: unknown): string | undefined {
  const properties = (feature as { properties?: { kind?: unknown } | null } | null | undefined)?.properties;
  return typeof properties?.kind === 'string' ? properties.kind : undefined;
}

/** Map programs write `null` for every property left empty. */
function dropNulls(feature: unknown): unknown {
  const properties = (feature as { properties?: unknown } | null | undefined)?.properties;
  if (typeof properties !== 'object' || properties === null) return feature;
  const filled = Object.entries(properties).filter(([, value]) => value !== null);
  return { ...(feature as object), properties: Object.fromEntries(filled) };
}

function unknownKind(source: JsonSource, path: FieldPath, kind: string | undefined): Fault {
  const at = kind === undefined ? path : [...path, 'properties', 'kind'];
  return {
    ...faultAt(source, at, {
      rule: 'map-kind',
      found: kind === undefined ? 'a feature without a kind' : shown(kind),
      expected: `one of ${listed(MAP_KINDS, 24)}`,
      mend: didYouMean(kind ?? '', MAP_KINDS, 'Give the feature a property "kind", or take it out of this file.'),
    }),
    field: 'kind',
  };
}

function secondOutline(source: JsonSource, path: FieldPath): Fault {
  return {
    ...faultAt(source, path, {
      rule: 'map-outline',
      found: 'a second outline',
      expected: 'one outline a water',
      mend: 'Keep one. An island has the kind island; another water has a file of its own.',
    }),
    field: 'kind',
  };
}

function missingOutline(file: string, faults: readonly Fault[]): readonly Fault[] {
  // An outline that could not be read has been told already.
  if (faults.some(({ field, rule }) => field === 'coordinates' || rule.startsWith('ring-'))) return [];
  return [
    faultOfFile(file, {
      rule: 'map-outline',
      found: 'no outline',
      expected: 'one feature of the kind outline, a Polygon of the water’s edge',
      mend: 'Draw the water’s edge and give it the property "kind": "outline".',
    }),
  ];
}

/** Old exports name their coordinate system; any other than WGS 84 would put the water somewhere else. */
function systemFaults(collection: object, source: JsonSource): readonly Fault[] {
  const system = (collection as { crs?: { properties?: { name?: unknown } } }).crs?.properties?.name;
  if (system === undefined || /CRS84|EPSG:+4326$/.test(String(system))) return [];
  return [
    faultAt(source, ['crs'], {
      rule: 'map-system',
      found: shown(String(system)),
      expected: 'longitude and latitude on WGS 84 (EPSG:4326)',
      mend: 'Export the map again and choose EPSG:4326 as the coordinate system.',
    }),
  ];
}
