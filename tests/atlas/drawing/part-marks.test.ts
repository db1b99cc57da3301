import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Mark, partMarks } from '../../../src/atlas/drawing/part-marks.ts';

const mark = (x: number, y: number): Mark => ({ x, y, radius: 10 });

describe('partMarks', () => {
  it('leaves marks that have room where they belong', () => {
    expect(partMarks([mark(0, 0), mark(100, 0)], 4)).toEqual([
      [0, 0],
      [100, 0],
    ]);
  });

  it('parts two marks by their sizes and the gap, each by as much', () => {
    const [a, b] = partMarks([mark(0, 0), mark(10, 0)], 4);
    expect(b![0] - a![0]).toBeCloseTo(24, 0);
    expect(a![0] + b![0]).toBeCloseTo(10, 6);
  });

  it('parts marks in one place', () => {
    const [a, b] = partMarks([mark(5, 5), mark(5, 5)], 0);
    expect(Math.hypot(a![0] - b![0], a![1] - b![1])).toBeCloseTo(20, 0);
  });

  it('gives the same for the same, and never a broken number', () => {
    const coordinate = fc.integer({ min: 0, max: 200 });
    const marks = fc.array(fc.record({ x: coordinate, y: coordinate, radius: fc.integer({ min: 1, max: 40 }) }), {
      maxLength: 12,
    });
    fc.assert(
      fc.property(marks, (given) => {
        const places = partMarks(given, 5);
        expect(places).toEqual(partMarks(given, 5));
        expect(places.flat().every(Number.isFinite)).toBe(true);
        expect(places).toHaveLength(given.length);
      }),
    );
  });
});
