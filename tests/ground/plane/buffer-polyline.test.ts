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
