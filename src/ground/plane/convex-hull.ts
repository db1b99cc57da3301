import type { PlanePoint } from './plane-point.ts';
import { side } from './segment-distance.ts';

/** The corners of the smallest convex shape about some points, anticlockwise (Andrew's monotone chain, 1979). */
export function convexHull(points: readonly PlanePoint[]): readonly PlanePoint[] {
  const sorted = points.toSorted((a, b) => a.x - b.x || a.y - b.y);
  const chain = (along: readonly PlanePoint[]) => {
    const corners: PlanePoint[] = [];
    for (const point of along) {
      while (corners.length > 1 && side(corners.at(-2)!, corners.at(-1)!, point) <= 0) corners.pop();
      corners.push(point);
    }
    return corners.slice(0, -1);
  };
  const hull = [...chain(sorted), ...chain(sorted.toReversed())];
  return hull.length === 0 ? sorted.slice(0, 1) : hull;
}

/** Whether a point lies inside a convex shape or on its edge; a shape of two corners is a segment and holds nothing. */
export function isInHull(hull: readonly PlanePoint[], p: PlanePoint): boolean {
  return hull.length > 2 && hull.every((corner, index) => side(corner, hull[(index + 1) % hull.length]!, p) >= 0);
}
