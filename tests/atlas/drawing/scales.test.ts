import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { brokenScale } from '../../../src/atlas/drawing/broken-scale.ts';
import { evenMarks } from '../../../src/atlas/drawing/even-marks.ts';
import { ratioScale } from '../../../src/atlas/drawing/ratio-scale.ts';

describe('a ratio scale', () => {
  it('puts half and twice at the same distance from par', () => {
    const { place } = ratioScale(0.4, 2.5, 0, 100);
    expect(place(1).at).toBeCloseTo(50, 10);
    expect(place(2).at - 50).toBeCloseTo(50 - place(0.5).at, 10);
  });

  it('cuts what lies beyond its ends and says on which side', () => {
    const { place } = ratioScale(0.5, 2, 0, 100);
    expect(place(0.1)).toEqual({ at: 0, cut: 'below' });
    expect(place(9)).toEqual({ at: 100, cut: 'above' });
    expect(place(2)).toEqual({ at: 100, cut: 'no' });
  });
});

describe('a broken scale', () => {
  it('rises throughout, meets at the break and ends at the end', () => {
    const scale = brokenScale(40, 17, 0.3, 0, 100);
    expect(scale.breakAt).toBe(70);
    expect(scale.place(17)).toBe(70);
    expect(scale.place(40)).toBe(100);
    fc.assert(
      fc.property(fc.double({ min: 0, max: 39, noNaN: true }), (distance) => {
        expect(scale.place(distance + 1)).toBeGreaterThan(scale.place(distance));
      }),
    );
  });

  it('has no break where little lies beyond it', () => {
    expect(brokenScale(20, 17, 0.3, 0, 100).breakAt).toBeNull();
    expect(brokenScale(20, 17, 0.3, 0, 100).place(10)).toBe(50);
  });
});

describe('even marks', () => {
  it('are round and take in both ends', () => {
    expect(evenMarks(0, 87)).toEqual([0, 50, 100]);
    expect(evenMarks(-0.04, 0.11)).toEqual([-0.05, 0, 0.05, 0.1, 0.15]);
    expect(evenMarks(3.2, 21)).toEqual([0, 5, 10, 15, 20, 25]);
  });

  it('are two to seven, in order, around any range', () => {
    const end = fc.double({ min: -1e4, max: 1e4, noNaN: true });
    fc.assert(
      fc.property(end, end, (a, b) => {
        const [low, high] = [Math.min(a, b), Math.max(a, b)];
        fc.pre(high === low || high - low > 1e-3);
        const marks = evenMarks(low, high);
        expect(marks.length).toBeGreaterThanOrEqual(2);
        expect(marks.length).toBeLessThanOrEqual(7);
        expect(marks[0]).toBeLessThanOrEqual(low + 1e-6);
        expect(marks.at(-1)).toBeGreaterThanOrEqual(high - 1e-6);
        expect([...marks].sort((x, y) => x - y)).toEqual(marks);
      }),
    );
  });
});
