import type { PlanePoint, PlaneRing } from '../../ground/plane/plane-point.ts';
import { side } from '../../ground/plane/segment-distance.ts';
import { CutSides, type Side } from './cut-sides.ts';

/**
 * Two sides of a ring without repeated corners that meet anywhere but at a corner they share, as numbers of the points they start from, or null. A
 * line is swept over the ring from west to east, which keeps the sides it cuts in their order from south to north; only
 * sides that become neighbours there can be the first to meet (Shamos and Hoey 1976). So a shore of a hundred thousand
 * points, or a comb whose teeth all lie side by side, takes little longer than sorting its corners.
 */
export function firstSelfCrossing(ring: PlaneRing): readonly [number, number] | null {
  const count = ring.length;
  if (count < 3) return null;
  const sides = ring.map((_, i) => sideOf(ring, i));
  const cut = new CutSides(sides, count);
  const events = sides.flatMap(({ west, east }, i) => [
    { at: west, i, isStart: true },
    { at: east, i, isStart: false },
  ]);
  // At one point what begins goes first, so that two sides that only touch are in the list together.
  events.sort((a, b) => compareCorners(a.at, b.at) || Number(b.isStart) - Number(a.isStart));
  const crossing = (i: number | undefined, j: number | undefined): readonly [number, number] | null => {
    if (i === undefined || j === undefined || areNeighbours(i, j, count) || !meet(ring, i, j)) return null;
    return [Math.min(i, j), Math.max(i, j)];
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

function sideOf(ring: PlaneRing, i: number): Side {
  const [a, b] = [ring[i]!, ring[(i + 1) % ring.length]!];
  return compareCorners(a, b) <= 0 ? { west: a, east: b } : { west: b, east: a };
}

/** From west to east, and where that is the same from south to north. */
function compareCorners(a: PlanePoint, b: PlanePoint): number {
  return a.x - b.x || a.y - b.y;
}

function meet(ring: PlaneRing, i: number, j: number): boolean {
  const [a, b] = [ring[i]!, ring[(i + 1) % ring.length]!];
  const [c, d] = [ring[j]!, ring[(j + 1) % ring.length]!];
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
