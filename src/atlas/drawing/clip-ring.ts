import type { Point } from './simplify-line.ts';

/**
 * The part of a ring inside a window from (0, 0) to (width, height) and `margin` around it (Sutherland and Hodgman
 * 1974). A ring that leaves and comes back runs along the window's edge in between, which the margin keeps out of sight.
 */
export function clipRing(ring: readonly Point[], width: number, height: number, margin: number): readonly Point[] {
  const edges: readonly Edge[] = [
    { axis: 0, at: -margin, side: 1 },
    { axis: 0, at: width + margin, side: -1 },
    { axis: 1, at: -margin, side: 1 },
    { axis: 1, at: height + margin, side: -1 },
  ];
  return edges.reduce((points, edge) => clipAtEdge(points, edge), ring);
}

interface Edge {
  readonly axis: 0 | 1;
  readonly at: number;
  /** 1 keeps what lies beyond `at`, −1 what lies before it. */
  readonly side: 1 | -1;
}

function clipAtEdge(points: readonly Point[], { axis, at, side }: Edge): readonly Point[] {
  const isInside = (point: Point) => (point[axis] - at) * side >= 0;
  return points.flatMap((point, i) => {
    const before = points[(i + points.length - 1) % points.length]!;
    const share = (at - before[axis]) / (point[axis] - before[axis]);
    const cut: Point = [before[0] + share * (point[0] - before[0]), before[1] + share * (point[1] - before[1])];
    if (isInside(point)) return isInside(before) ? [point] : [cut, point];
    return isInside(before) ? [cut] : [];
  });
}
