import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { smoothThrough } from '../../../src/atlas/drawing/smooth-path.ts';

type Place = readonly [number, number];

/** The curve's pieces, each as its four points, read back from the relative steps of the path. */
function piecesOf(path: string): readonly (readonly Place[])[] {
  let at = path
    .match(/^M(\S+?),([-\d.]+)/)!
    .slice(1)
    .map(Number) as unknown as Place;
  return [...path.matchAll(/h([-\d.]+)|c([^hcM]+)/g)].map(([, level, curve]) => {
    const from = at;
    const steps = curve === undefined ? [] : curve.split(' ').map((pair) => pair.split(',').map(Number));
    const points =
      level === undefined
        ? steps.map(([x, y]): Place => [from[0] + x!, from[1] + y!])
        : Array.from({ length: 3 }, (_, i): Place => [from[0] + (Number(level) * (i + 1)) / 3, from[1]]);
    at = points[2]!;
    return [from, ...points];
  });
}

function heightAt(points: readonly Place[], t: number): number {
  const [a, b, c, d] = points.map(([, y]) => y) as [number, number, number, number];
  return (1 - t) ** 3 * a + 3 * (1 - t) ** 2 * t * b + 3 * (1 - t) * t ** 2 * c + t ** 3 * d;
}

const places = fc
  .array(fc.tuple(fc.integer({ min: 4, max: 80 }), fc.integer({ min: 0, max: 100 })), { minLength: 1, maxLength: 9 })
  .map((steps) => {
    let x = 0;
    return steps.map(([wide, y]): Place => {
      x += wide;
      return [x, y];
    });
  });

describe('smoothThrough', () => {
  it('passes through every place, and between two is never above or below both', () => {
    fc.assert(
      fc.property(places, (through) => {
        const pieces = piecesOf(smoothThrough(through));
        expect(pieces).toHaveLength(through.length - 1);
        pieces.forEach((piece, i) => {
          const [from, to] = [through[i]!, through[i + 1]!];
          expect(piece[0]![0]).toBeCloseTo(from[0], 6);
          expect(piece[3]![1]).toBeCloseTo(to[1], 6);
          for (let t = 0; t <= 1; t += 0.1) {
            // Steps are rounded to a tenth.
            expect(heightAt(piece, t)).toBeGreaterThanOrEqual(Math.min(from[1], to[1]) - 0.1);
            expect(heightAt(piece, t)).toBeLessThanOrEqual(Math.max(from[1], to[1]) + 0.1);
          }
        });
      }),
    );
  });

  it('keeps a straight line straight, and is level at a peak and at both ends', () => {
    const [, middle] = piecesOf(
      smoothThrough([
        [0, 0],
        [30, 30],
        [60, 60],
        [90, 90],
      ]),
    );
    expect(heightAt(middle!, 0.5)).toBeCloseTo(45, 6);
    expect(
      smoothThrough([
        [0, 10],
        [30, 0],
        [60, 10],
      ]),
    ).toBe('M0,10c10,0 20,-10 30,-10c10,0 20,10 30,10');
  });

  it('goes level between places of one height, and rounds to whole units where asked', () => {
    const places = [
      [0, 5],
      [20, 5],
      [41, 12.4],
    ] as const;
    expect(smoothThrough(places)).toBe('M0,5h20c7,0 14,7.4 21,7.4');
    expect(smoothThrough(places, 1)).toBe('M0,5h20c7,0 14,7 21,7');
  });

  it('is a mere place for one, and nothing for none', () => {
    expect([smoothThrough([[1, 2]]), smoothThrough([])]).toEqual(['M1,2', '']);
  });
});
