import type * as z from 'zod';
import type { MapArea, MapPath, MapPlace, OverheadLine, WaterMap } from '../../domain/map.ts';
import type { Ring } from '../../domain/place.ts';
import type { Fault } from '../fault.ts';
import { readFields } from '../schemas/read-fields.ts';
import type { JsonSource } from '../sources/json-source.ts';
import { type FieldPath, faultAt } from '../sources/source.ts';
import { shown } from '../sources/text-place.ts';

type Mutable<T> = { -readonly [K in keyof T]: T[K] };

/** A map being read: what has been drawn on it so far. */
export interface Sheet {
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

/** A sheet with nothing drawn on it yet. */
export function emptySheet(source: JsonSource, faults: readonly Fault[]): Sheet {
  return {
    outline: null,
    islands: [],
    overheadLines: [],
    paths: [],
    places: [],
    areas: [],
    pathByThing: new Map(),
    ids: new Map(),
    faults: [...faults],
    source,
  };
}

/** Reads a feature by the schema of its kind; its faults go onto the sheet. */
export function readFeature<T>(sheet: Sheet, schema: z.ZodType<T>, feature: unknown, path: FieldPath): T | null {
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

/** Notes from which feature a thing was drawn. */
export function place(sheet: Sheet, thing: object, path: FieldPath): void {
  sheet.pathByThing.set(thing, path);
}

/** The feature's own id, or its kind and number. */
export function idOf(
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
