import { describe, expect, test } from 'vitest';
import { isobathLines } from '../../src/ground/depth/isobath-lines.ts';
import { triangleAt, triangulated, valueInTriangle } from '../../src/ground/depth/triangulation.ts';
import { volumeOf } from '../../src/ground/depth/volume.ts';
import { footOnPolyline } from '../../src/ground/plane/polyline-distance.ts';
import { ringAreaSquareMetres } from '../../src/ground/plane/ring-area.ts';
import { pointAlong } from '../../src/ground/plane/sector.ts';
import { footOnSegment } from '../../src/ground/plane/segment-distance.ts';
import { ringSegments, segmentIndex } from '../../src/ground/plane/segment-index.ts';
import published from './data/planar.json' with { type: 'json' };

/**
 * Sources: closed forms and exact rational arithmetic (Python's fractions); interpolation over the triangulation by
 * scipy 1.10.1 (Delaunay, LinearNDInterpolator); fetch by the first crossing of a ray, in closed form.
 */
const { point_segment, point_polyline, polygons, point_in_polygon, basins, interpolation, fetch } =
  published.data_and_expected;

const point = ([x, y]: readonly number[]) => ({ x: x!, y: y! });
const near = (value: number, expected: number, absolute = 1e-9) =>
  expect(Math.abs(value - expected)).toBeLessThanOrEqual(absolute + 1e-12 * Math.abs(expected));

describe('a point and a segment', () => {
  test.each(point_segment)('from $p to $a–$b: foot, share and distance', (row) => {
    const foot = footOnSegment(point(row.p), point(row.a), point(row.b));
    near(foot.distanceMetres, row.distance);
    near(foot.share, row.t);
    near(foot.x, row.foot[0]!);
    near(foot.y, row.foot[1]!);
  });

  test.each(point_polyline.rows)('from $p to the polyline: foot and distance', (row) => {
    const foot = footOnPolyline(point(row.p), point_polyline.line.map(point))!;
    near(foot.distanceMetres, row.distance);
    near(foot.x, row.foot[0]!);
    near(foot.y, row.foot[1]!);
    expect(foot.segment).toBe(row.segment);
  });
});

describe('rings', () => {
  test.each(polygons)('$name: area, its island taken off', ({ rings, area }) => {
    const [outer, ...holes] = rings.map((ring) => ringAreaSquareMetres(ring.map(point)));
    near(outer! - holes.reduce((sum, hole) => sum + hole, 0), area);
  });

  test.each(point_in_polygon)('$point in the $polygon: $inside', (row) => {
    const { rings } = polygons.find(({ name }) => name === row.polygon)!;
    expect(segmentIndex(ringSegments(rings.map((ring) => ring.map(point)))).isInside(point(row.point))).toBe(
      row.inside,
    );
  });
});

describe('a triangulation', () => {
  const triangulation = triangulated(interpolation.points.map(point));
  const valueAt = (values: readonly number[], p: readonly number[]) =>
    valueInTriangle(triangulation, Float64Array.from(values), triangleAt(triangulation, point(p))!, point(p));

  test('is the one scipy finds', () => {
    const found: number[][] = [];
    for (let e = 0; e < triangulation.corners.length; e += 3)
      found.push([...triangulation.corners.slice(e, e + 3)].sort((a, b) => a - b));
    const order = (a: number[], b: number[]) => a[0]! - b[0]! || a[1]! - b[1]! || a[2]! - b[2]!;
    expect(found.sort(order)).toEqual(interpolation.triangles);
  });

  test('reproduces a plane exactly', () => {
    interpolation.query.forEach((p, i) => {
      near(valueAt(interpolation.z_plane, p), interpolation.expected_plane[i]!);
    });
  });

  test('interpolates a curved bed as scipy does', () => {
    interpolation.query.forEach((p, i) => {
      near(valueAt(interpolation.z_curved, p), interpolation.expected_tin_curved[i]!);
    });
  });

  test('has the volume under the plane, and contours that lie in it', () => {
    const values = Float64Array.from(interpolation.z_plane);
    const { areaSquareMetres, volumeCubicMetres } = volumeOf(triangulation, values, () => true);
    near(areaSquareMetres, interpolation.hull_area, 1e-8);
    near(volumeCubicMetres, interpolation.volume_under_plane, 1e-8);
    const lines = isobathLines(triangulation, values, () => true, interpolation.plane_contour.level);
    expect(lines).toHaveLength(1);
    for (const { x, y } of lines[0]!) near(0.02 * x - 0.01 * y, 0.5);
  });

  test('finds no triangle for a point outside all of them', () => {
    expect(triangleAt(triangulation, { x: -50, y: 50 })).toBeNull();
  });
});

describe('a pyramid of triangles', () => {
  const { vertices_xyd, levels, volume } = basins.polyhedral;
  const triangulation = triangulated(vertices_xyd.map(point));
  const depths = Float64Array.from(vertices_xyd, (vertex) => vertex[2]!);

  test('has its volume', () => {
    near(volumeOf(triangulation, depths, () => true).volumeCubicMetres, volume);
  });

  test.each(levels.filter(({ depth }) => depth > 0))(
    'has one closed isobath of the right length and area at $depth m',
    (level) => {
      const [line, ...others] = isobathLines(triangulation, depths, () => true, level.depth);
      expect(others).toEqual([]);
      expect(line![0]).toEqual(line![line!.length - 1]);
      const length = line!.slice(1).reduce((sum, p, i) => sum + Math.hypot(p.x - line![i]!.x, p.y - line![i]!.y), 0);
      near(length, level.contour_length);
      near(ringAreaSquareMetres(line!.slice(0, -1)), level.area_deeper);
    },
  );
});

describe('fetch', () => {
  const fetchFrom = (
    rings: readonly (readonly (readonly number[])[])[],
    from: { x: number; y: number },
    bearing: number,
  ) =>
    segmentIndex(ringSegments(rings.map((ring) => ring.map(point)))).firstCrossing(
      from,
      pointAlong(from, bearing, 5000),
    )!.distanceMetres;

  test.each(fetch.polygons)('$name: the way into the wind to the first bank', (row) => {
    for (const { wind_from, fetch: expected } of row.fetch)
      near(fetchFrom(row.rings, point(row.point), wind_from), expected, 1e-6);
  });

  test('on a round water agrees with the chord of the circle', () => {
    const ring = Array.from({ length: 20_000 }, (_, i) => {
      const { x, y } = pointAlong({ x: 0, y: 0 }, (i * 360) / 20_000, 150);
      return [x, y];
    });
    for (const { offset_east, wind_from, fetch: expected } of fetch.circle_radius_150) {
      near(fetchFrom([ring], { x: offset_east, y: 0 }, wind_from), expected, 1e-4);
    }
  });
});
