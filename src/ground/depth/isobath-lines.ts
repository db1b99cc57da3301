import type { PlanePoint } from '../plane/plane-point.ts';
import { nextAround, type Triangulation } from './triangulation.ts';

/**
 * The lines on which values over a triangulation equal a level, by marching through the triangles that count. A value
 * equal to the level stands on the upper side, so that every triangle is crossed by one straight piece or none, and the
 * pieces join without a gap. A closed line repeats its first point; another ends on the rim of what counts.
 */
export function isobathLines(
  { points, corners, twins }: Triangulation,
  values: Float64Array,
  counts: (triangle: number) => boolean,
  level: number,
): readonly (readonly PlanePoint[])[] {
  // Each piece leads from the half-edge it enters by to the one it leaves by, the upper side always on the same hand.
  const leavesBy = new Map<number, number>();
  for (let triangle = 0; triangle < corners.length / 3; triangle++) {
    if (!counts(triangle)) continue;
    let enters = -1;
    let leaves = -1;
    for (let e = 3 * triangle; e < 3 * triangle + 3; e++) {
      const from = values[corners[e]!]! >= level;
      const to = values[corners[nextAround(e)]!]! >= level;
      if (!from && to) enters = e;
      if (from && !to) leaves = e;
    }
    if (enters !== -1) leavesBy.set(enters, leaves);
  }
  const crossing = (e: number): PlanePoint => {
    const [i, j] = [corners[e]!, corners[nextAround(e)]!];
    // Always from the lower index, so that both sides of an edge find the same point to the last digit.
    const [a, b] = i < j ? [i, j] : [j, i];
    const share = (level - values[a]!) / (values[b]! - values[a]!);
    return {
      x: points[a]!.x + share * (points[b]!.x - points[a]!.x),
      y: points[a]!.y + share * (points[b]!.y - points[a]!.y),
    };
  };

  const entered = new Set([...leavesBy.values()].map((e) => twins[e]!));
  const starts = [...leavesBy.keys()].filter((e) => !entered.has(e));
  const lines: PlanePoint[][] = [];
  // Lines with two ends first; whatever is left then is closed.
  for (const start of [...starts, ...leavesBy.keys()]) {
    if (!leavesBy.has(start)) continue;
    const line = [crossing(start)];
    let enter = start;
    while (leavesBy.has(enter)) {
      const leave = leavesBy.get(enter)!;
      leavesBy.delete(enter);
      const point = crossing(leave);
      const last = line[line.length - 1]!;
      if (point.x !== last.x || point.y !== last.y) line.push(point);
      enter = twins[leave]!;
    }
    if (line.length > 1) lines.push(line);
  }
  return lines;
}
