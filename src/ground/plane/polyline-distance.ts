import type { PlanePoint } from './plane-point.ts';
import { footOnSegment, type SegmentFoot } from './segment-distance.ts';

/** The point of a polyline nearest to another point. */
export interface PolylineFoot extends SegmentFoot {
  /** Counted from 0. */
  readonly segment: number;
}

/** The point of a line nearest to `p`, the earlier one of two as near; null for a line without points. */
export function footOnPolyline(p: PlanePoint, line: readonly PlanePoint[]): PolylineFoot | null {
  const first = line[0];
  if (first === undefined) return null;
  let nearest: PolylineFoot = { ...footOnSegment(p, first, first), segment: 0 };
  for (let i = 1; i < line.length; i++) {
    const foot = footOnSegment(p, line[i - 1]!, line[i]!);
    if (foot.distanceMetres < nearest.distanceMetres) nearest = { ...foot, segment: i - 1 };
  }
  return nearest;
}
