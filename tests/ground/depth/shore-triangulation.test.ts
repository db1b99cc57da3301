import fc from 'fast-check';
import { expect, test } from 'vitest';
import { dryShore, shoreTriangulation } from '../../../src/ground/depth/shore-triangulation.ts';
import { nextAround } from '../../../src/ground/depth/triangulation.ts';
import { volumeOf } from '../../../src/ground/depth/volume.ts';
import { ringAreaSquareMetres } from '../../../src/ground/plane/ring-area.ts';
import { ringSegments, segmentIndex } from '../../../src/ground/plane/segment-index.ts';

const hook = [
  { x: 0, y: 0 },
  { x: 60, y: 0 },
  { x: 60, y: 40 },
  { x: 52, y: 40 },
  { x: 52, y: 8 },
  { x: 8, y: 8 },
  { x: 8, y: 30 },
  { x: 0, y: 30 },
];

test('the dry shore has a point at least every 3 m and keeps every corner', () => {
  const [ring] = dryShore([hook]);
  for (const corner of hook) expect(ring).toContainEqual({ ...corner, depthMetres: 0, measured: false });
  ring!.forEach((a, i) => {
    const b = ring![(i + 1) % ring!.length]!;
    expect(Math.hypot(b.x - a.x, b.y - a.y)).toBeLessThanOrEqual(3 + 1e-9);
  });
});

test('no triangle crosses the bank of a narrow, hooked water, wherever it is plumbed', () => {
  const { isInside } = segmentIndex(ringSegments([hook]));
  const place = fc.record({ x: fc.integer({ min: 1, max: 59 }), y: fc.integer({ min: 1, max: 39 }) });
  fc.assert(
    fc.property(fc.array(place, { minLength: 1, maxLength: 20 }), (places) => {
      const soundings = places.filter(isInside).map((p) => ({ ...p, depthMetres: 1, measured: true }));
      const { triangulation, depths } = shoreTriangulation(dryShore([hook]), soundings);
      const { corners, points } = triangulation;
      const inWater = (t: number) => {
        const [a, b, c] = [0, 1, 2].map((k) => points[corners[3 * t + k]!]!);
        return isInside({ x: (a!.x + b!.x + c!.x) / 3, y: (a!.y + b!.y + c!.y) / 3 });
      };
      expect(volumeOf(triangulation, depths, inWater).areaSquareMetres).toBeCloseTo(ringAreaSquareMetres(hook), 6);
    }),
    { numRuns: 40 },
  );
});

test('a spit a hand wide, plumbed close on both sides, has all its bank as edges', () => {
  // Water on both sides of a bank 0.3 m wide: with points so near, its stretches are split again and again.
  const spit = [
    { x: 0, y: 0 },
    { x: 60, y: 0 },
    { x: 60, y: 40 },
    { x: 0, y: 40 },
    { x: 0, y: 8.3 },
    { x: 50, y: 8.3 },
    { x: 50, y: 8 },
    { x: 0, y: 8 },
  ];
  const soundings = [0.4, 11.7, 20.3, 41.9].flatMap((x) =>
    [7.9, 8.4].map((y) => ({ x, y, depthMetres: 1, measured: true })),
  );
  const { triangulation } = shoreTriangulation(dryShore([spit]), soundings);
  const { corners, points } = triangulation;
  const edges = new Set(Array.from(corners, (from, e) => `${from} ${corners[nextAround(e)]}`));
  for (const bank of [8, 8.3]) {
    const along = points.flatMap(({ x, y }, i) => (y === bank ? [{ x, i }] : [])).sort((a, b) => a.x - b.x);
    for (let k = 1; k < along.length; k++) {
      const [a, b] = [along[k - 1]!.i, along[k]!.i];
      expect(edges.has(`${a} ${b}`) || edges.has(`${b} ${a}`), `${along[k - 1]!.x} to ${along[k]!.x}`).toBe(true);
    }
  }
});

test('a depth known on the shore reaches no farther than to the next points of it', () => {
  const [dry] = dryShore([hook]);
  const shore = [dry!.map((point, i) => (i === 2 ? { ...point, depthMetres: 0.9, measured: true } : point))];
  const { triangulation, depths, measured } = shoreTriangulation(shore, [
    { x: 4, y: 20, depthMetres: 1, measured: true },
  ]);
  expect([...measured].filter((is) => is === 1)).toHaveLength(2);
  triangulation.points.forEach(({ y }, i) => {
    if (y === 0 && depths[i]! > 0) expect(Math.abs(triangulation.points[i]!.x - dry![2]!.x)).toBeLessThan(3);
  });
  expect(nextAround(5)).toBe(3);
});
