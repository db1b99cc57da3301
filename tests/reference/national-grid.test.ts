import { describe, expect, test } from 'vitest';
import { distanceMetres } from '../../src/ground/geodesy/geodesic-between.ts';
import { gridToPosition, positionToGrid } from '../../src/ground/geodesy/transverse-mercator.ts';
import {
  formatGridReference,
  fromNationalGrid,
  gridReference,
  parseGridReference,
  toNationalGrid,
} from '../../src/ground/national-grid.ts';
import published from './data/national-grid.json' with { type: 'json' };

/**
 * Sources: Ordnance Survey, "A Guide to Coordinate Systems in Great Britain", annexes B and C (worked example at Caister,
 * Helmert parameters); IOGP Guidance Note 7-2 (second example); Ordnance Survey's OSTN15 developer pack, 20 of its test
 * points. Computed columns by PROJ 9.1.1.
 */
const { projection, ostn15_points, grid_references } = published.data_and_expected;

describe('the projection', () => {
  test.each(projection)('takes $lat_osgb36, $lon_osgb36 to its easting and northing within 1 mm: $name', (row) => {
    const found = positionToGrid({ lat: row.lat_osgb36, lng: row.lon_osgb36 });
    expect(Math.abs(found.eastingMetres - row.computed.e)).toBeLessThan(0.001);
    expect(Math.abs(found.northingMetres - row.computed.n)).toBeLessThan(0.001);
  });

  test('agrees with the worked example of the guide within 1 mm, both ways', () => {
    const example = projection.find(({ name }) => name.startsWith('OS guide'))!;
    const { e, n } = example.published!;
    const grid = positionToGrid({ lat: example.lat_osgb36, lng: example.lon_osgb36 });
    expect(Math.hypot(grid.eastingMetres - e, grid.northingMetres - n)).toBeLessThan(0.001);
    const back = gridToPosition({ eastingMetres: e, northingMetres: n });
    expect(distanceMetres(back, { lat: example.lat_osgb36, lng: example.lon_osgb36 })).toBeLessThan(0.001);
  });

  test('agrees with the second published example within its own last digits', () => {
    const example = projection.find(({ name }) => name.startsWith('IOGP'))!;
    const grid = positionToGrid({ lat: example.lat_osgb36, lng: example.lon_osgb36 });
    expect(
      Math.hypot(grid.eastingMetres - example.published!.e, grid.northingMetres - example.published!.n),
    ).toBeLessThan(0.011);
  });
});

describe('WGS 84 to the National Grid', () => {
  test.each(ostn15_points)(
    '$id: the seven-parameter shift is met within 2 mm and the precise grid within 5 m',
    (row) => {
      const found = toNationalGrid({ lat: row.lat_etrs89, lng: row.lon_etrs89 });
      expect(Math.abs(found.eastingMetres - row.helmert_os.e)).toBeLessThan(0.002);
      expect(Math.abs(found.northingMetres - row.helmert_os.n)).toBeLessThan(0.002);
      expect(Math.hypot(found.eastingMetres - row.ostn15.e, found.northingMetres - row.ostn15.n)).toBeLessThan(4.99);
    },
  );

  // The guide's inverse series loses a few millimetres at 8.6° W, on St Kilda.
  test.each(ostn15_points)('$id comes back to itself within 5 mm', (row) => {
    const position = { lat: row.lat_etrs89, lng: row.lon_etrs89 };
    expect(distanceMetres(fromNationalGrid(toNationalGrid(position)), position)).toBeLessThan(0.005);
  });
});

describe('grid references', () => {
  test.each(grid_references)('$grid_ref_10 has its letters and figures, cut and not rounded', (row) => {
    const place = { eastingMetres: row.e, northingMetres: row.n };
    expect(formatGridReference(place, 10)).toBe(row.grid_ref_10);
    expect(formatGridReference(place, 8)).toBe(row.grid_ref_8);
    expect(formatGridReference(place, 6)).toBe(row.grid_ref_6);
  });

  test.each(grid_references)('$grid_ref_8 is read back as the middle of its square of 10 m', (row) => {
    const grid = toNationalGrid(parseGridReference(row.grid_ref_8)!);
    expect(Math.abs(grid.eastingMetres - (Math.floor(row.e / 10) * 10 + 5))).toBeLessThan(0.005);
    expect(Math.abs(grid.northingMetres - (Math.floor(row.n / 10) * 10 + 5))).toBeLessThan(0.005);
  });

  test('of a point of the developer pack agree with its own easting and northing, to the figures the shift allows', () => {
    for (const { lat_etrs89, lon_etrs89, ostn15 } of ostn15_points) {
      const [, east, north] = gridReference({ lat: lat_etrs89, lng: lon_etrs89 })!.split(' ');
      expect(Math.abs(Number(east) * 10 + 5 - (ostn15.e % 100_000))).toBeLessThan(10);
      expect(Math.abs(Number(north) * 10 + 5 - (ostn15.n % 100_000))).toBeLessThan(10);
    }
  });
});
