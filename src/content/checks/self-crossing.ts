import type { PlanePoint, PlaneRing } from '../../ground/plane/plane-point.ts';
import { side } from '../../ground/plane/segment-distance.ts';
import { CutSides, type Side } from './cut-sides.ts';

/**
 * Two sides of a ring that meet anywhere but at a corner they share, as numbers of the points they start from, or null. A
 * line is swept over the ring from west to east, which keeps the sides it cuts in their order from south to north; only
 * sides that become neighbours there can be the first to meet (Shamos and Hoey 1976). So a shore of a hundred thousand
 * points, or a comb whose teeth all lie side by side, takes little longer than sorting its corners.
 */
export function firstSelfCrossing(ring: PlaneRing): readonly [number, number] | null {
  const points = withoutRepeats(ring);
  const count = points.length;
  if (count < 3) return null;
  const sides = points.map((_, i) => sideOf(points, i));
  const cut = new CutSides(sides, count);
  const events = sides.flatMap(({ west, east }, i) => [
    { at: west, i, isStart: true },
    { at: east, i, isStart: false },
  ]);
  // At one point what begins goes first, so that two sides that only touch are in the list together.
  events.sort((a, b) => compareCorners(a.at, b.at) || Number(b.isStart) - Number(a.isStart));
  const crossing = (i: number | undefined, j: number | undefined): readonly [number, number] | null => {
    if (i === undefined || j === undefined || areNeighbours(i, j, count) || !meet(points, i, j)) return null;
    const numbers = [points[Math.min(i, j)]!.number, points[Math.max(i, j)]!.number];
    return [numbers[0]!, numbers[1]!];
  };
  for (const { i, isStart } of events) {
    if (isStart) {
      const [south, north, touched] = cut.add(i);
      const found = crossing(i, touched) ?? crossing(i, south) ?? crossing(i, north);
      if (found !== null) return found;
    } else {
      const [south, north] = cut.remove(i);
      const found = crossing(south, north);
      if (found !== null) return found;
    }
  }
  return null;
}

function areNeighbours(i: number, j: number, count: number): boolean {
  return (i + 1) % count === j || (j + 1) % count === i;
}

function sideOf(points: readonly Corner[], i: number): Side {
  const [a, b] = [points[i]!, points[(i + 1) % points.length]!];
  return compareCorners(a, b) <= 0 ? { west: a, east: b } : { west: b, east: a };
}

/** From west to east, and where that is the same from south to north. */
function compareCorners(a: PlanePoint, b: PlanePoint): number {
  return a.x - b.x || a.y - b.y;
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
