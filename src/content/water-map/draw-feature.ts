import type { AreaKind, MapArea, MapPath, MapPlace, OverheadLine, PlaceKind } from '../../domain/map.ts';
import type { Ring } from '../../domain/place.ts';
import type { Fault } from '../fault.ts';
import {
  AREA_KINDS,
  areaSchema,
  GateSchema,
  IslandSchema,
  OutlineSchema,
  OverheadLineSchema,
  PathSchema,
  PLACE_KINDS,
  placeSchema,
} from '../schemas/water-map-schema.ts';
import { withoutUndefined } from '../schemas/without-undefined.ts';
import type { JsonSource } from '../sources/json-source.ts';
import { type FieldPath, faultAt } from '../sources/source.ts';
import { idOf, place, readFeature, type Sheet } from './sheet.ts';

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

const PLACE_SCHEMAS = Object.fromEntries(PLACE_KINDS.map((kind) => [kind, placeSchema(kind)])) as Record<
  Exclude<PlaceKind, 'gate'>,
  ReturnType<typeof placeSchema>
>;
const AREA_SCHEMAS = Object.fromEntries(AREA_KINDS.map((kind) => [kind, areaSchema(kind)])) as Record<
  AreaKind,
  ReturnType<typeof areaSchema>
>;

/** A way to draw a feature of one kind onto the sheet. */
type Draw = (sheet: Sheet, feature: unknown, path: FieldPath) => void;

/** How each kind is drawn. */
export const FEATURE_READERS: Readonly<Record<string, Draw>> = {
  outline: drawOutline,
  island: drawIsland,
  'overhead-line': drawOverheadLine,
  path: drawPath,
  ...Object.fromEntries(
    (['gate', ...PLACE_KINDS] as const).map((kind): [string, Draw] => [
      kind,
      (sheet, feature, path) => drawPlace(sheet, kind, feature, path),
    ]),
  ),
  ...Object.fromEntries(
    AREA_KINDS.map((kind): [string, Draw] => [kind, (sheet, feature, path) => drawArea(sheet, kind, feature, path)]),
  ),
};

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
  const { name, note, checked_on, ...gate } = read.properties;
  const ofKind = sheet.places.filter((other) => other.kind === kind).length;
  const spot: MapPlace = withoutUndefined({
    id: idOf(sheet, read, path, ofKind),
    kind,
    name: name ?? PLACE_NAMES[kind],
    at: read.geometry.coordinates,
    note,
    checkedOn: checked_on,
    ...('vehicles' in gate ? { vehicles: gate.vehicles } : {}),
    ...('locked' in gate ? { locked: gate.locked } : {}),
    ...('opened_by' in gate ? { openedBy: gate.opened_by } : {}),
    ...('ambulance' in gate ? { ambulance: gate.ambulance } : {}),
    ...('hours' in gate ? { hours: gate.hours } : {}),
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
