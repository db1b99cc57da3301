import type { PlanePoint, PlaneRing } from '../../ground/plane/plane-point.ts';
import { side } from '../../ground/plane/segment-distance.ts';

/**
 * The first two sides of a ring that meet anywhere but at a corner they share, as numbers of the points they start
 * from, or null. Sides are swept from west to east (the pruning of Shamos and Hoey 1976, without its tree), so that a map
 * of thousands of points takes no time worth naming.
 */
export function firstSelfCrossing(ring: PlaneRing): readonly [number, number] | null {
  const points = withoutRepeats(ring);
  const count = points.length;
  const order = points.map((_, i) => i).sort((i, j) => westOf(points, i) - westOf(points, j));
  let open: number[] = [];
  for (const i of order) {
    const west = westOf(points, i);
    open = open.filter((j) => eastOf(points, j) >= west);
    for (const j of open) {
      const isNeighbour = (i + 1) % count === j || (j + 1) % count === i;
      if (!isNeighbour && meet(points, i, j)) {
        const numbers = [points[Math.min(i, j)]!.number, points[Math.max(i, j)]!.number];
        return [numbers[0]!, numbers[1]!];
      }
    }
    open.push(i);
  }
  return null;
}

interface Corner extends PlanePoint {
  readonly number: number;
}

/** A point drawn twice in a row is no crossing. */
function withoutRepeats(ring: PlaneRing): readonly Corner[] {
  return ring
    .map((p, number) => ({ ...p, number }))
    .filter(({ x, y }, i) => {
      const next = ring[(i + 1) % ring.length]!;
      return x !== next.x || y !== next.y;
    });
}

function westOf(points: readonly Corner[], i: number): number {
  return Math.min(points[i]!.x, points[(i + 1) % points.length]!.x);
}

function eastOf(points: readonly Corner[], i: number): number {
  return Math.max(points[i]!.x, points[(i + 1) % points.length]!.x);
}

function meet(points: readonly Corner[], i: number, j: number): boolean {
  const [a, b] = [points[i]!, points[(i + 1) % points.length]!];
  const [c, d] = [points[j]!, points[(j + 1) % points.length]!];
  const [s1, s2, s3, s4] = [side(a, b, c), side(a, b, d), side(c, d, a), side(c, d, b)];
  if (s1 * s2 < 0 && s3 * s4 < 0) return true;
  return (
    (s1 === 0 && isBetween(a, b, c)) ||
    (s2 === 0 && isBetween(a, b, d)) ||
    (s3 === 0 && isBetween(c, d, a)) ||
    (s4 === 0 && isBetween(c, d, b))
  );
}

/** Whether a point in line with two others lies between them. */
function isBetween(a: PlanePoint, b: PlanePoint, p: PlanePoint): boolean {
  return (
    Math.min(a.x, b.x) <= p.x && p.x <= Math.max(a.x, b.x) && Math.min(a.y, b.y) <= p.y && p.y <= Math.max(a.y, b.y)
  );
}
