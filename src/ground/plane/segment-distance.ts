import type { PlanePoint } from './plane-point.ts';

/** The point of a segment nearest to another point. */
export interface SegmentFoot extends PlanePoint {
  readonly distanceMetres: number;
  /** Where it lies on the segment: 0 at the start, 1 at the end; 0 on a segment without length. */
  readonly share: number;
}

/** The point of the segment from `a` to `b` nearest to `p`. */
export function footOnSegment(p: PlanePoint, a: PlanePoint, b: PlanePoint): SegmentFoot {
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  const squared = dx * dx + dy * dy;
  const share = squared === 0 ? 0 : Math.max(0, Math.min(1, ((p.x - a.x) * dx + (p.y - a.y) * dy) / squared));
  // Measured from the nearer end, so that a foot on a vertex is the vertex itself.
  const x = share === 1 ? b.x : a.x + share * dx;
  const y = share === 1 ? b.y : a.y + share * dy;
  return { x, y, share, distanceMetres: Math.hypot(p.x - x, p.y - y) };
}

/** Distance between two segments, 0 where they cross or touch. */
export function distanceBetweenSegments(a: PlanePoint, b: PlanePoint, c: PlanePoint, d: PlanePoint): number {
  if (segmentsCross(a, b, c, d)) return 0;
  return Math.min(
    footOnSegment(a, c, d).distanceMetres,
    footOnSegment(b, c, d).distanceMetres,
    footOnSegment(c, a, b).distanceMetres,
    footOnSegment(d, a, b).distanceMetres,
  );
}

/** Whether two segments cross inside both; touching ends are found by their distance of 0. */
function segmentsCross(a: PlanePoint, b: PlanePoint, c: PlanePoint, d: PlanePoint): boolean {
  return side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0;
}

/** Positive where `p` lies left of the line from `a` to `b`, negative where right: twice the triangle's area. */
export function side(a: PlanePoint, b: PlanePoint, p: PlanePoint): number {
  return (b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x);
}
