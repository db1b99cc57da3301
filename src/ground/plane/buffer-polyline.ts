import { type Geom, union } from 'polyclip-ts';
import type { PlanePoint, PlaneRing } from './plane-point.ts';

const QUARTER_STEPS = 6;

/** Corners nearer to each other than this are one. */
const SAME_CORNER_METRES = 0.001;
/** Capsules that cannot be put together as they are, are tried on a grid so fine; 0 is no grid. */
const GRIDS_METRES: readonly number[] = [0, 0.001, 0.01];

/**
 * The area within `metres` of a line, as polygons of one outer ring and its holes: a capsule about each segment, put
 * together. Round ends are drawn with six chords a quarter, so the edge lies at most 0.9 % of the distance (and a
 * centimetre) inside the true one. Never throws: where a line folds back so sharply that the union of the capsules cannot
 * be worked out in floating point, they are returned one by one and cover the same ground.
 */
export function bufferPolyline(line: readonly PlanePoint[], metres: number): readonly (readonly PlaneRing[])[] {
  const corners = line.filter((point, index) => {
    const before = line[index - 1];
    return before === undefined || Math.hypot(point.x - before.x, point.y - before.y) > SAME_CORNER_METRES;
  });
  const capsules = corners.slice(1).map((end, index) => capsule(corners[index]!, end, metres));
  if (capsules.length === 0) return [];
  for (const grid of GRIDS_METRES) {
    const joined = unionOrNull(capsules.map((ring): Geom => [onGrid(ring, grid)]));
    if (joined !== null) return joined;
  }
  return capsules.map((ring) => [ring.map(([x, y]): PlanePoint => ({ x, y }))]);
}

/** Null where the library cannot complete a ring: edges that all but coincide are more than its arithmetic tells apart. */
function unionOrNull([first, ...rest]: readonly Geom[]): readonly (readonly PlaneRing[])[] | null {
  try {
    return union(first!, ...rest).map((polygon) =>
      polygon.map((ring) => ring.slice(0, -1).map(([x, y]): PlanePoint => ({ x, y }))),
    );
  } catch {
    return null;
  }
}

function onGrid(ring: readonly [number, number][], grid: number): [number, number][] {
  const snapped = (value: number) => (grid === 0 ? value : Math.round(value / grid) * grid);
  return ring.map(([x, y]) => [snapped(x), snapped(y)]);
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
