import { type Geom, union } from 'polyclip-ts';
import type { PlanePoint, PlaneRing } from './plane-point.ts';

const QUARTER_STEPS = 6;

/**
 * The area within `metres` of a line, as polygons of one outer ring and its holes: a capsule about each segment, put
 * together. Round ends are drawn with six chords a quarter, so the edge lies at most 0.9 % of the distance inside the
 * true one.
 */
export function bufferPolyline(line: readonly PlanePoint[], metres: number): readonly (readonly PlaneRing[])[] {
  const capsules = line.slice(1).map((end, index): Geom => [capsule(line[index]!, end, metres)]);
  const [first, ...rest] = capsules;
  if (first === undefined) return [];
  return union(first, ...rest).map((polygon) =>
    polygon.map((ring) => ring.slice(0, -1).map(([x, y]): PlanePoint => ({ x, y }))),
  );
}

function capsule(a: PlanePoint, b: PlanePoint, radius: number): [number, number][] {
  const along = Math.atan2(b.y - a.y, b.x - a.x);
  return [...halfCircle(b, along - Math.PI / 2, radius), ...halfCircle(a, along + Math.PI / 2, radius)];
}

/** Half a turn anticlockwise from an angle, both ends included. */
function halfCircle(centre: PlanePoint, from: number, radius: number): [number, number][] {
  const steps = QUARTER_STEPS * 2;
  return Array.from({ length: steps + 1 }, (_, step) => {
    const angle = from + (Math.PI * step) / steps;
    return [centre.x + radius * Math.cos(angle), centre.y + radius * Math.sin(angle)];
  });
}
