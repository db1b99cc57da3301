/** A place on a drawing, in user units: along, then down. */
export type Point = readonly [number, number];

/**
 * Leaves out points that lie within `tolerance` of the line through the ones kept (Douglas and Peucker, 1973). The ends
 * stay. What cannot be seen costs bytes on a phone.
 */
export function simplifyLine(points: readonly Point[], tolerance: number): readonly Point[] {
  const [first, last] = [points[0], points.at(-1)];
  if (points.length < 3 || first === undefined || last === undefined) return points;
  let farthest = 0;
  let distance = tolerance;
  for (let index = 1; index < points.length - 1; index++) {
    const off = distanceToSegment(points[index]!, first, last);
    if (off > distance) [farthest, distance] = [index, off];
  }
  if (farthest === 0) return [first, last];
  const before = simplifyLine(points.slice(0, farthest + 1), tolerance);
  return [...before.slice(0, -1), ...simplifyLine(points.slice(farthest), tolerance)];
}

function distanceToSegment([x, y]: Point, [x1, y1]: Point, [x2, y2]: Point): number {
  const [dx, dy] = [x2 - x1, y2 - y1];
  const length = dx * dx + dy * dy;
  const along = length === 0 ? 0 : Math.min(1, Math.max(0, ((x - x1) * dx + (y - y1) * dy) / length));
  return Math.hypot(x - x1 - along * dx, y - y1 - along * dy);
}
