import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { footOnSegment } from '../../../src/ground/plane/segment-distance.ts';
import { ringSegments, type Segment, segmentIndex } from '../../../src/ground/plane/segment-index.ts';

const coordinate = fc.integer({ min: -50, max: 50 });
const point = fc.record({ x: coordinate, y: coordinate });
const segments = fc.array(fc.tuple(point, point), { maxLength: 60 });

describe('the nearest segment', () => {
  test('is as near as the nearest of all, asked one by one', () => {
    fc.assert(
      fc.property(segments, point, (drawn, p) => {
        const least = Math.min(Infinity, ...drawn.map(([a, b]) => footOnSegment(p, a, b).distanceMetres));
        expect(segmentIndex(drawn).nearest(p)?.distanceMetres ?? Infinity).toBeCloseTo(least, 9);
      }),
      { numRuns: 300 },
    );
  });

  test('is none where there is no segment', () => {
    const none = segmentIndex([]);
    const p = { x: 0, y: 0 };
    expect([none.nearest(p), none.within(p, 10), none.crossings(p, { x: 9, y: 9 }), none.isInside(p)]).toEqual([
      null,
      [],
      [],
      false,
    ]);
  });

  test('of several points at one place is the first', () => {
    const p = { x: 3, y: 4 };
    const found = segmentIndex(Array.from({ length: 20 }, (): Segment => [p, p])).nearest({ x: 0, y: 0 });
    expect(found).toMatchObject({ distanceMetres: 5, segment: 0 });
  });
});

test('the segments within a distance are those found by asking all of them', () => {
  fc.assert(
    fc.property(segments, point, fc.integer({ min: 0, max: 40 }), (drawn, p, metres) => {
      const all = drawn.flatMap(([a, b], i) => (footOnSegment(p, a, b).distanceMetres <= metres ? [i] : []));
      expect(
        segmentIndex(drawn)
          .within(p, metres)
          .map(({ segment }) => segment),
      ).toEqual(all);
    }),
    { numRuns: 300 },
  );
});

describe('crossings', () => {
  test('are the same whether a segment is asked alone or among many, and come in order', () => {
    fc.assert(
      fc.property(segments, point, point, (drawn, from, to) => {
        const together = segmentIndex(drawn).crossings(from, to);
        const alone = drawn.flatMap((segment, i) =>
          segmentIndex([segment])
            .crossings(from, to)
            .map(({ distanceMetres }) => ({ distanceMetres, segment: i })),
        );
        const order = (a: { distanceMetres: number; segment: number }, b: typeof a) =>
          a.distanceMetres - b.distanceMetres || a.segment - b.segment;
        expect(together).toEqual(alone.sort(order));
        expect(segmentIndex(drawn).firstCrossing(from, to)).toEqual(together[0] ?? null);
      }),
      { numRuns: 300 },
    );
  });

  test('of a way through a corner are one, of a way that touches a corner two or none', () => {
    const corner = segmentIndex([
      [
        { x: -10, y: 0 },
        { x: 0, y: 0 },
      ],
      [
        { x: 0, y: 0 },
        { x: 10, y: 5 },
      ],
    ]);
    expect(corner.crossings({ x: 0, y: -5 }, { x: 0, y: 5 })).toHaveLength(1);
    const spike = segmentIndex([
      [
        { x: -5, y: 5 },
        { x: 0, y: 0 },
      ],
      [
        { x: 0, y: 0 },
        { x: 5, y: 5 },
      ],
    ]);
    expect(spike.crossings({ x: -9, y: 0 }, { x: 9, y: 0 }).length % 2).toBe(0);
  });
});

test('inside a ring is what an even–odd count from far away says, also on a level with its corners', () => {
  const ring = [
    { x: 0, y: 0 },
    { x: 10, y: 0 },
    { x: 10, y: 10 },
    { x: 5, y: 5 },
    { x: 0, y: 10 },
  ];
  const { isInside } = segmentIndex(ringSegments([ring]));
  expect([
    isInside({ x: 2, y: 5 }),
    isInside({ x: 5, y: 7 }),
    isInside({ x: -3, y: 5 }),
    isInside({ x: -3, y: 10 }),
  ]).toEqual([true, false, false, false]);
});
