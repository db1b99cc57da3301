import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { hatch, levelStrokes } from '../../../src/atlas/drawing/hatch.ts';

describe('slanting strokes', () => {
  it('stay inside their box, whatever its shape', () => {
    const size = fc.double({ min: 0, max: 300, noNaN: true });
    fc.assert(
      fc.property(
        size,
        size,
        size,
        size,
        fc.constantFrom('rising' as const, 'falling' as const),
        (x, y, width, height, way) => {
          for (const [, px, py] of hatch({ x, y, width, height }, 6, way).matchAll(/[ML](-?[\d.]+),(-?[\d.]+)/g)) {
            expect(Number(px)).toBeGreaterThanOrEqual(x - 0.06);
            expect(Number(px)).toBeLessThanOrEqual(x + width + 0.06);
            expect(Number(py)).toBeGreaterThanOrEqual(y - 0.06);
            expect(Number(py)).toBeLessThanOrEqual(y + height + 0.06);
          }
        },
      ),
    );
  });

  it('fill a box and leave an empty one empty', () => {
    expect(hatch({ x: 0, y: 0, width: 24, height: 12 }, 6).match(/M/g)?.length).toBe(5);
    expect(hatch({ x: 0, y: 0, width: 0, height: 12 }, 6)).toBe('');
  });
});

describe('level strokes', () => {
  it('lie inside the box, evenly', () => {
    expect(levelStrokes({ x: 0, y: 0, width: 10, height: 12 }, 4)).toBe('M0,4H10M0,8H10');
  });
});
