import fc from 'fast-check';
import { expect, it } from 'vitest';
import { simplifyLine } from '../../../src/atlas/drawing/simplify-line.ts';

it('leaves out points on a straight stretch and keeps its corners', () => {
  const line = [
    [0, 0],
    [1, 0],
    [2, 0],
    [3, 5],
    [4, 10],
  ] as const;
  expect(simplifyLine(line, 0.1)).toEqual([
    [0, 0],
    [2, 0],
    [4, 10],
  ]);
});

it('keeps both ends and every point it leaves out within the tolerance', () => {
  const step = fc.integer({ min: -20, max: 20 });
  fc.assert(
    fc.property(fc.array(step, { minLength: 2, maxLength: 60 }), (heights) => {
      const line = heights.map((height, index) => [index, height] as const);
      const kept = simplifyLine(line, 3);
      expect(kept[0]).toEqual(line[0]);
      expect(kept.at(-1)).toEqual(line.at(-1));
      for (const [x, y] of line) {
        const after = kept.findIndex(([keptX]) => keptX >= x);
        const [b, a] = [kept[after]!, kept[Math.max(after - 1, 0)]!];
        const through = b[0] === a[0] ? b[1] : a[1] + ((b[1] - a[1]) * (x - a[0])) / (b[0] - a[0]);
        // Within 3 of the line means at most 3 times the slant's stretch above or below it.
        const stretch = b[0] === a[0] ? 1 : Math.hypot(1, (b[1] - a[1]) / (b[0] - a[0]));
        expect(Math.abs(y - through)).toBeLessThanOrEqual(3 * stretch + 1e-9);
      }
    }),
  );
});
