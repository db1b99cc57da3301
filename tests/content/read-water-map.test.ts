import { expect, test } from 'vitest';
import { readWaterMap } from '../../src/content/read-water-map.ts';
import { FILE, faultsOf, messagesOf, replacing, smallCheckedVenue } from './small-venue.ts';

const feature = (properties: string, geometry: string) => (text: string) =>
  text.replace('\n]}', `,\n{"type":"Feature","properties":{${properties}},"geometry":${geometry}}\n]}`);
const POINT = '{"type":"Point","coordinates":[-0.0512,52.7499,12.5]}';
const LINE = '{"type":"LineString","coordinates":[[-0.0512,52.7499],[-0.0509,52.7499]]}';

test('reads every kind of thing, longitude first, and names what has no name', () => {
  const { map } = smallCheckedVenue({
    [FILE.map]: (text) => {
      const withPlace = feature('"kind":"aed","note":null,"checked_on":"2026-10-01"', POINT)(text);
      const withPath = feature(
        '"kind":"path","width_m":1.2,"steps":4,"gradient":"1 in 20","step_free":false',
        LINE,
      )(withPlace);
      return feature(
        '"kind":"reeds"',
        '{"type":"Polygon","coordinates":[[[-0.0505,52.7501],[-0.0504,52.7501],[-0.0504,52.7502],[-0.0505,52.7501]]]}',
      )(withPath);
    },
  }).waters[0]!;
  expect(map.outline[0]).toEqual({ lat: 52.75, lng: -0.051 });
  expect(map.outline).toHaveLength(4);
  expect(map.overheadLines).toEqual([
    {
      id: 'line-1',
      name: '11 kV line',
      voltageVolts: 11_000,
      line: [
        { lat: 52.7525, lng: -0.056 },
        { lat: 52.7525, lng: -0.044 },
      ],
    },
  ]);
  expect(map.places).toEqual([
    { id: 'gate-1', kind: 'gate', name: 'Road gate', at: { lat: 52.7499, lng: -0.0512 }, vehicles: true, locked: 'no' },
    { id: 'aed-1', kind: 'aed', name: 'AED', at: { lat: 52.7499, lng: -0.0512 }, checkedOn: '2026-10-01' },
  ]);
  expect(map.paths).toMatchObject([{ id: 'path-1', widthMetres: 1.2, steps: 4, gradient: 0.05, stepFree: false }]);
  expect(map.areas).toMatchObject([{ id: 'reeds-1', kind: 'reeds' }]);
});

test('reads holes of the outline as islands', () => {
  const hole = '[[-0.0508,52.7505],[-0.0506,52.7505],[-0.0506,52.7506],[-0.0508,52.7505]]';
  const venue = smallCheckedVenue({ [FILE.map]: replacing('[-0.051,52.75]]]', `[-0.051,52.75]],${hole}]`) });
  expect(venue.waters[0]?.map.islands.map(({ id }) => id)).toEqual(['hole-1', 'island-2']);
});

test('refuses a ring that is not closed', () => {
  expect(messagesOf({ [FILE.map]: replacing(',[-0.051,52.75]]]', ']]') })).toMatchInlineSnapshot(`
    [
      "waters/mill-pond.geojson:2:95 error Unexpected "[[-0.051,52.75],[-0.0498,52.75],[-0.0498,52.7507],[-0.051,52…" for coordinates, expected a closed ring: the last position equal to the first. Repeat the first position at the end of the ring. (ring-open)",
    ]
  `);
});

test('refuses JSON that is broken in the middle or cut short, at the place', () => {
  expect(messagesOf({ [FILE.map]: replacing('"kind":"gate"', '"kind":gate') })).toMatchInlineSnapshot(`
    [
      "waters/mill-pond.geojson:5:40 error Unexpected "roperties":{"kind":gate,"name":"Road gate","vehicles":true,"…", expected GeoJSON, whole and well-formed. Look for a comma, bracket or quotation mark that is missing or too many just there, or export the map again. (json-syntax)",
    ]
  `);
  expect(messagesOf({ [FILE.map]: (text) => text.slice(0, -4) })).toMatchInlineSnapshot(`
    [
      "waters/mill-pond.geojson:5:157 error Unexpected end of the file, expected GeoJSON, whole and well-formed. Look for a comma, bracket or quotation mark that is missing or too many just there, or export the map again. (json-syntax)",
    ]
  `);
  expect(messagesOf({ [FILE.map]: replacing('{"kind":"island",', '{"kind":"island",,') })).toMatchInlineSnapshot(`
    [
      "waters/mill-pond.geojson:3:49 error Unexpected "":{"kind":"island",,"name":"Swan Island"},"geometry":{"type"…", expected GeoJSON, whole and well-formed. Look for a comma, bracket or quotation mark that is missing or too many just there, or export the map again. (json-syntax)",
    ]
  `);
});

test.each([
  ['a property nobody reads', feature('"kind":"aed","colour":"red"', POINT), 'field-unknown', 'colour'],
  ['an unknown kind', feature('"kind":"aerater"', POINT), 'map-kind', 'kind'],
  ['a feature without a kind', feature('"name":"x"', POINT), 'map-kind', 'kind'],
  ['a shape where a point belongs', feature('"kind":"aed"', LINE), 'field-word', 'geometry.type'],
  ['no geometry at all', feature('"kind":"aed"', 'null'), 'field-shape', 'geometry'],
  [
    'metres where degrees belong',
    feature('"kind":"aed"', '{"type":"Point","coordinates":[531274,318806]}'),
    'map-position',
    'coordinates',
  ],
  [
    'decimal commas, which make four numbers of two',
    feature('"kind":"aed"', '{"type":"Point","coordinates":[-0,51,52,74]}'),
    'decimal-comma',
    'coordinates',
  ],
  ['a second outline', replacing('"kind":"island","name":"Swan Island"', '"kind":"outline"'), 'map-outline', 'kind'],
  ['an id given twice', feature('"kind":"aed"', `${POINT},"id":"line-1"`), 'map-id', 'id'],
  [
    'another coordinate system',
    replacing(
      '{"type":"FeatureCollection",',
      '{"type":"FeatureCollection","crs":{"type":"name","properties":{"name":"urn:ogc:def:crs:EPSG::27700"}},',
    ),
    'map-system',
    'crs',
  ],
  ['a height that is a word', replacing('"voltage_kv":11', '"voltage_kv":"11 kV"'), 'field-shape', 'voltage_kv'],
  ['a date that does not exist', feature('"kind":"aed","checked_on":"2026-02-30"', POINT), 'day-exists', 'checked_on'],
])('refuses %s', (_, change, rule, field) => {
  expect(faultsOf({ [FILE.map]: change }).map((fault) => [fault.rule, fault.field])).toEqual([[rule, field]]);
});

test('accepts the coordinate system old exports name, and empty properties written as null', () => {
  const crs = replacing(
    '{"type":"FeatureCollection",',
    '{"type":"FeatureCollection","name":"x","crs":{"type":"name","properties":{"name":"urn:ogc:def:crs:OGC:1.3:CRS84"}},',
  );
  expect(
    faultsOf({ [FILE.map]: (text) => replacing('"vehicles":true', '"vehicles":true,"note":null')(crs(text)) }),
  ).toEqual([]);
});

test('reads a map of twenty thousand points and finds the crossing in it', () => {
  const ring = Array.from({ length: 20_000 }, (_, i) => [
    0.002 * Math.cos(i / 3183.1),
    52 + 0.001 * Math.sin(i / 3183.1),
  ]);
  [ring[10_000], ring[10_200]] = [ring[10_200]!, ring[10_000]!];
  const outline = { type: 'Polygon', coordinates: [[...ring, ring[0]]] };
  const map = {
    type: 'FeatureCollection',
    features: [{ type: 'Feature', properties: { kind: 'outline' }, geometry: outline }],
  };
  expect(readWaterMap(FILE.map, JSON.stringify(map)).faults).toEqual([]);
  expect(faultsOf({ [FILE.map]: JSON.stringify(map) }).map(({ rule }) => rule)).toContain('ring-crossing');
});
