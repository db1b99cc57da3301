import { describe, expect, it } from 'vitest';
import { partsInSight } from '../../../src/atlas/drawing/parts-in-sight.ts';
import type { Point } from '../../../src/atlas/drawing/simplify-line.ts';

const seen = (...line: Point[]) => partsInSight(line, 100, 100, 8);

describe('the parts of a line in sight', () => {
  it('end with the stretches that show', () => {
    expect(seen([50, -900], [50, -200], [50, 40], [60, 300], [60, 900])).toEqual([
      [
        [50, -200],
        [50, 40],
        [60, 300],
      ],
    ]);
  });

  it('hold a stretch that crosses the drawing with both ends out of it', () => {
    expect(seen([-500, 50], [500, 50])).toHaveLength(1);
    expect(seen([-100, 50], [50, -100])).toHaveLength(1);
  });

  it('are several where the line leaves and comes back', () => {
    expect(seen([50, 50], [150, 50], [150, 60], [50, 60])).toHaveLength(2);
  });

  it('are none of a line that keeps away, or is no line', () => {
    expect(seen([200, 0], [200, 100])).toEqual([]);
    expect(seen([50, 50])).toEqual([]);
    expect(seen()).toEqual([]);
  });
});
