import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bufferPolyline } from '../../../src/ground/plane/buffer-polyline.ts';
import type { PlaneRing } from '../../../src/ground/plane/plane-point.ts';
import { footOnPolyline } from '../../../src/ground/plane/polyline-distance.ts';

function area(ring: PlaneRing): number {
  return Math.abs(
    ring.reduce((sum, p, i) => {
      const q = ring[(i + 1) % ring.length]!;
      return sum + p.x * q.y - q.x * p.y;
    }, 0) / 2,
  );
}

describe('bufferPolyline', () => {
  it('makes a capsule about one segment', () => {
    const [polygon] = bufferPolyline(
      [
        { x: 0, y: 0 },
        { x: 100, y: 0 },
      ],
      30,
    );
    // A rectangle and two half discs: 2·30·100 + π·30².
    const exact = 6000 + Math.PI * 900;
    expect(area(polygon?.[0] ?? [])).toBeLessThan(exact);
    expect(area(polygon?.[0] ?? [])).toBeGreaterThan(exact * 0.995);
  });

  it('joins the capsules of a bent line into one polygon, without points inside it', () => {
    const line = [
      { x: 0, y: 0 },
      { x: 50, y: 0 },
      { x: 50, y: 80 },
    ];
    const polygons = bufferPolyline(line, 10);
    expect(polygons).toHaveLength(1);
    for (const point of polygons[0]?.[0] ?? []) {
      expect(footOnPolyline(point, line)?.distanceMetres).toBeGreaterThan(9.8);
    }
  });

  it('leaves a hole where a line closes around ground out of reach', () => {
    const line = [
      { x: 0, y: 0 },
      { x: 200, y: 0 },
      { x: 200, y: 200 },
      { x: 0, y: 200 },
      { x: 0, y: 0 },
    ];
    expect(bufferPolyline(line, 30)[0]).toHaveLength(2);
  });

  it('gives nothing for a line without a segment', () => {
    expect(bufferPolyline([{ x: 0, y: 0 }], 30)).toEqual([]);
  });

  it('keeps every point of its edge at the distance, within the chords', () => {
    const coordinate = fc.integer({ min: -500, max: 500 });
    const lines = fc.array(fc.record({ x: coordinate, y: coordinate }), { minLength: 2, maxLength: 6 });
    fc.assert(
      fc.property(lines, (line) => {
        for (const ring of bufferPolyline(line, 34).flat()) {
          for (const point of ring) {
            const distance = footOnPolyline(point, line)?.distanceMetres ?? 0;
            expect(distance).toBeGreaterThan(34 * 0.99);
            expect(distance).toBeLessThan(34 * 1.001);
          }
        }
      }),
      { numRuns: 60 },
    );
  });
});

/** Lines that fold back so sharply that the union of their capsules failed ("Unable to complete output ring"). */
const SHARP_LINES: readonly (readonly (readonly [number, number])[])[] = [
  [
    [0, 0],
    [-75.49089947157213, 79.65736084243169],
    [-75.46769123566733, 79.95688820821401],
    [-76.02791285305372, 29.2222293811151],
    [-89.56880143578836, -87.12145745758758],
    [-70.09887329327883, -66.92573253295818],
    [-99.54828971854093, -99.73710748943212],
  ],
  [
    [0, 0],
    [0.04734470333953573, 0.01329182538832165],
    [-22.322376646410216, 98.53631157108266],
    [-4.245764839957122, 14.843716656978572],
    [-11.3069280311805, -80.92956257143858],
    [-7.567863056096353, -49.791847175259704],
    [8.542675574825825, -26.26264999167275],
    [-23.2754871747161, -76.6904928819009],
  ],
  [
    [0, 0],
    [-0.08401048049268056, -0.05408546359079663],
    [21.68042859059406, 15.023953965566015],
    [0.9843081990084954, 2.560587161974105],
    [-56.68719892090334, 107.32922484023919],
    [-17.628467213206243, 213.8115538991714],
    [-45.67161312448182, 125.94402566168512],
    [-94.65168057032503, 129.03785581641188],
  ],
];

describe('a line that folds back sharply', () => {
  it.each(SHARP_LINES.map((line) => [line]))(
    'has an area about it all the same, and covers every spot within reach',
    (points) => {
      const line = points.map(([x, y]) => ({ x, y }));
      const polygons = bufferPolyline(line, 34);
      fc.assert(
        fc.property(
          fc.integer({ min: 1, max: line.length - 1 }),
          fc.double({ min: 0, max: 1, noNaN: true }),
          fc.double({ min: 0, max: 33.6, noNaN: true }),
          fc.double({ min: 0, max: 2 * Math.PI, noNaN: true }),
          (segment, share, away, turn) => {
            const [a, b] = [line[segment - 1]!, line[segment]!];
            const spot = {
              x: a.x + share * (b.x - a.x) + away * Math.cos(turn),
              y: a.y + share * (b.y - a.y) + away * Math.sin(turn),
            };
            expect(
              polygons.some(
                ([outer, ...holes]) => isInRing(spot, outer!) && !holes.some((hole) => isInRing(spot, hole)),
              ),
            ).toBe(true);
          },
        ),
      );
    },
  );

  it('does not throw, whatever its corners', () => {
    const step = fc.record({
      turn: fc.oneof(fc.double({ min: 176, max: 184, noNaN: true }), fc.double({ min: -150, max: 150, noNaN: true })),
      metres: fc.oneof(fc.double({ min: 0, max: 0.5, noNaN: true }), fc.double({ min: 0, max: 120, noNaN: true })),
    });
    fc.assert(
      fc.property(fc.array(step, { minLength: 1, maxLength: 7 }), (steps) => {
        const line = [{ x: 0, y: 0 }];
        let heading = 0;
        for (const { turn, metres } of steps) {
          heading += (turn * Math.PI) / 180;
          const from = line.at(-1)!;
          line.push({ x: from.x + metres * Math.sin(heading), y: from.y + metres * Math.cos(heading) });
        }
        const length = steps.reduce((sum, { metres }) => sum + metres, 0);
        expect(bufferPolyline(line, 34).length > 0 || length < 0.01).toBe(true);
      }),
      { numRuns: 60 },
    );
  });
});

function isInRing({ x, y }: { readonly x: number; readonly y: number }, ring: PlaneRing): boolean {
  let isInside = false;
  for (let i = 0; i < ring.length; i++) {
    const [a, b] = [ring[i]!, ring[(i + 1) % ring.length]!];
    if (a.y > y !== b.y > y && x < ((b.x - a.x) * (y - a.y)) / (b.y - a.y) + a.x) isInside = !isInside;
  }
  return isInside;
}
