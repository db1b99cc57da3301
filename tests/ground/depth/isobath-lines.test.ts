import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { isobathLines } from '../../../src/ground/depth/isobath-lines.ts';
import { triangulated } from '../../../src/ground/depth/triangulation.ts';

/** A square of four by four points, 10 m apart. */
const points = Array.from({ length: 16 }, (_, i) => ({ x: 10 * (i % 4) + 0.01 * i, y: 10 * Math.floor(i / 4) }));
const triangulation = triangulated(points);
const all = () => true;

function isClosed(line: readonly { x: number; y: number }[]): boolean {
  const [first, last] = [line[0]!, line[line.length - 1]!];
  return first.x === last.x && first.y === last.y;
}

describe('an isobath', () => {
  test('over a slope is one open line from rim to rim', () => {
    const lines = isobathLines(
      triangulation,
      Float64Array.from(points, ({ y }) => y),
      all,
      15,
    );
    expect(lines).toHaveLength(1);
    expect(isClosed(lines[0]!)).toBe(false);
    for (const { y } of lines[0]!) expect(y).toBeCloseTo(15, 12);
  });

  test('round a hole is closed', () => {
    const hole = Float64Array.from(points, (_, i) => (i === 5 ? 3 : 0));
    const lines = isobathLines(triangulation, hole, all, 1);
    expect(lines).toHaveLength(1);
    expect(isClosed(lines[0]!)).toBe(true);
  });

  test('through a corner of the triangles goes on without a gap or a doubled point', () => {
    const lines = isobathLines(
      triangulation,
      Float64Array.from(points, ({ y }) => y),
      all,
      20,
    );
    expect(lines).toHaveLength(1);
    const [line] = lines;
    for (let i = 1; i < line!.length; i++) expect(line![i]).not.toEqual(line![i - 1]);
  });

  test('above or below all values is none', () => {
    const flat = new Float64Array(16).fill(2);
    expect([isobathLines(triangulation, flat, all, 3), isobathLines(triangulation, flat, all, 1)]).toEqual([[], []]);
  });

  test('stays on the triangles that count', () => {
    const slope = Float64Array.from(points, ({ y }) => y);
    const west = (t: number) => [0, 1, 2].every((k) => points[triangulation.corners[3 * t + k]!]!.x <= 10.1);
    const [line] = isobathLines(triangulation, slope, west, 15);
    expect(Math.max(...line!.map(({ x }) => x))).toBeLessThan(10.2);
    expect(isobathLines(triangulation, slope, () => false, 15)).toEqual([]);
  });

  test('of any bed is whole: each line is closed or ends on the rim, and every point lies at the level', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 4 }), { minLength: 16, maxLength: 16 }), (depths) => {
        const values = Float64Array.from(depths);
        for (const line of isobathLines(triangulation, values, all, 2)) {
          if (isClosed(line)) continue;
          for (const { x, y } of [line[0]!, line[line.length - 1]!]) {
            const onRim = y === 0 || y === 30 || x <= 0.121 || x >= 30.02;
            expect(onRim).toBe(true);
          }
        }
      }),
      { numRuns: 300 },
    );
  });
});
