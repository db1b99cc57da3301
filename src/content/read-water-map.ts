import * as z from 'zod';
import type { PlacedMap } from './content.ts';
import { didYouMean, listed } from './did-you-mean.ts';
import type { Fault } from './fault.ts';
import { type Reading, reading } from './reading.ts';
import { readFields } from './schemas/read-fields.ts';
import { MAP_KINDS } from './schemas/water-map-schema.ts';
import { type JsonSource, readJson } from './sources/json-source.ts';
import { type FieldPath, faultAt, faultOfFile } from './sources/source.ts';
import { shown } from './sources/text-place.ts';
import { FEATURE_READERS } from './water-map/draw-feature.ts';
import { featureWords, plainFeatures } from './water-map/drawn-feature.ts';
import { emptySheet, type Sheet } from './water-map/sheet.ts';

const CollectionSchema = z.looseObject({
  type: z.literal('FeatureCollection', { error: 'FeatureCollection' }),
  features: z.array(z.unknown(), { error: 'a list of features' }),
});

/** Reads `waters/<water>.geojson`. The map is null where it has no outline that can be read. */
export function readWaterMap(file: string, text: string): Reading<PlacedMap | null> {
  const { source, faults } = readJson(file, text);
  if (source === null) return reading(null, faults);
  const collection = readFields(CollectionSchema, source.value, source);
  if (collection.value === null) return reading(null, [...faults, ...collection.faults]);
  const sheet = emptySheet(source, [...faults, ...systemFaults(collection.value, source)]);
  collection.value.features.forEach((feature, index) => {
    drawFeature(sheet, feature, ['features', index]);
  });
  const { outline, islands, overheadLines, paths, places, areas } = sheet;
  if (outline === null) return reading(null, [...sheet.faults, ...missingOutline(file, sheet.faults)]);
  const map = { outline, islands, overheadLines, paths, places, areas };
  return reading({ map, source, pathOf: (thing) => sheet.pathByThing.get(thing) ?? [] }, sheet.faults);
}

function drawFeature(sheet: Sheet, feature: unknown, path: FieldPath): void {
  const kind = kindOf(feature);
  const draw = kind !== undefined && Object.hasOwn(FEATURE_READERS, kind) ? FEATURE_READERS[kind] : undefined;
  if (draw === undefined) sheet.faults.push(unknownKind(sheet.source, path, kind, feature));
  else for (const part of plainFeatures(feature)) draw(sheet, part, path);
}

function kindOf(feature: unknown): string | undefined {
  const properties = (feature as { properties?: { kind?: unknown } | null } | null | undefined)?.properties;
  return typeof properties?.kind === 'string' ? properties.kind : undefined;
}

function unknownKind(source: JsonSource, path: FieldPath, kind: string | undefined, feature: unknown): Fault {
  const at = kind === undefined ? path : [...path, 'properties', 'kind'];
  return {
    ...faultAt(source, at, {
      rule: 'map-kind',
      found: kind === undefined ? `a feature without a kind (${featureWords(feature)})` : shown(kind),
      expected: `one of ${listed(MAP_KINDS, 24)}`,
      mend: didYouMean(kind ?? '', MAP_KINDS, 'Give the feature a property "kind", or take it out of this file.'),
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
