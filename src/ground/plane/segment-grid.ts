import type { PlanePoint, PlaneRing } from './plane-point.ts';
import { footOnSegment, side } from './segment-distance.ts';

/** A stretch between two points; both may be one, then it stands for a point. */
export type Segment = readonly [PlanePoint, PlanePoint];

export interface NearestSegment extends PlanePoint {
  readonly distanceMetres: number;
  readonly segment: number;
  readonly share: number;
}

/** Where a straight way crosses a segment. */
export interface Crossing {
  readonly distanceMetres: number;
  readonly segment: number;
}

/** Segments sorted into square cells, so that what lies near is found without asking all of them. */
export interface SegmentGrid {
  /** The segment nearest to a point, null where there is none at all. */
  readonly nearest: (p: PlanePoint) => NearestSegment | null;
  /** All segments within a distance of a point, in no order. */
  readonly within: (p: PlanePoint, metres: number) => readonly NearestSegment[];
  /** Every crossing of the way from one point to another, in order. A corner just touched counts twice or not at all. */
  readonly crossings: (from: PlanePoint, to: PlanePoint) => readonly Crossing[];
  /** The first of them, null where there is none. */
  readonly firstCrossing: (from: PlanePoint, to: PlanePoint) => Crossing | null;
  /** Whether rings made of the segments hold the point, by counting crossings: islands inside an outline are outside. */
  readonly isInside: (p: PlanePoint) => boolean;
}

/** Cells are made for about this many segments each. */
const SEGMENTS_PER_CELL = 1;

/** The segments of closed rings, one ring after the other. */
export function ringSegments(rings: readonly PlaneRing[]): Segment[] {
  return rings.flatMap((ring) => ring.map((p, i): Segment => [p, ring[(i + 1) % ring.length]!]));
}

/** Sorts segments into a grid. Crossing a way costs the cells it passes, walked after Amanatides and Woo (1987). */
export function segmentGrid(segments: readonly Segment[]): SegmentGrid {
  const box = boundingBox(segments);
  const width = Math.max(box.maxX - box.minX, 1e-6);
  const height = Math.max(box.maxY - box.minY, 1e-6);
  const size = Math.max(
    Math.sqrt((width * height * SEGMENTS_PER_CELL) / Math.max(1, segments.length)),
    Math.max(width, height) / 2000,
  );
  const columns = Math.floor(width / size) + 1;
  const rows = Math.floor(height / size) + 1;
  const column = (x: number) => Math.max(0, Math.min(columns - 1, Math.floor((x - box.minX) / size)));
  const row = (y: number) => Math.max(0, Math.min(rows - 1, Math.floor((y - box.minY) / size)));
  const cells: number[][] = Array.from({ length: columns * rows }, () => []);
  segments.forEach(([a, b], i) => {
    for (let r = row(Math.min(a.y, b.y)); r <= row(Math.max(a.y, b.y)); r++) {
      for (let c = column(Math.min(a.x, b.x)); c <= column(Math.max(a.x, b.x)); c++) cells[r * columns + c]!.push(i);
    }
  });
  // The last question that met a segment: one segment stands in several cells.
  const asked = new Uint32Array(segments.length);
  let question = 0;

  function nearest(p: PlanePoint): NearestSegment | null {
    question++;
    const c0 = column(p.x);
    const r0 = row(p.y);
    let best = null as NearestSegment | null;
    for (let ring = 0; ring < Math.max(columns, rows); ring++) {
      for (let r = r0 - ring; r <= r0 + ring; r++) {
        if (r < 0 || r >= rows) continue;
        const step = r === r0 - ring || r === r0 + ring ? 1 : Math.max(1, 2 * ring);
        for (let c = c0 - ring; c <= c0 + ring; c += step) {
          if (c < 0 || c >= columns) continue;
          for (const i of cells[r * columns + c]!) {
            if (asked[i] === question) continue;
            asked[i] = question;
            const foot = footOnSegment(p, segments[i]![0], segments[i]![1]);
            if (best === null || foot.distanceMetres < best.distanceMetres) best = { ...foot, segment: i };
          }
        }
      }
      // Anything outside the rings of cells looked at is at least this far from a point inside the middle one.
      if (best !== null && best.distanceMetres <= ring * size - outsideBy(p, box)) break;
    }
    return best;
  }

  function within(p: PlanePoint, metres: number): NearestSegment[] {
    question++;
    const found: NearestSegment[] = [];
    for (let r = row(p.y - metres); r <= row(p.y + metres); r++) {
      for (let c = column(p.x - metres); c <= column(p.x + metres); c++) {
        for (const i of cells[r * columns + c]!) {
          if (asked[i] === question) continue;
          asked[i] = question;
          const foot = footOnSegment(p, segments[i]![0], segments[i]![1]);
          if (foot.distanceMetres <= metres) found.push({ ...foot, segment: i });
        }
      }
    }
    return found;
  }

  function walk(from: PlanePoint, to: PlanePoint, firstOnly: boolean): Crossing[] {
    question++;
    const found: Crossing[] = [];
    const length = Math.hypot(to.x - from.x, to.y - from.y);
    const clipped = clippedToBox(from, to, box);
    if (clipped === null || length === 0) return found;
    const dx = (to.x - from.x) / length;
    const dy = (to.y - from.y) / length;
    const [enter, leave] = [clipped[0] * length, clipped[1] * length];
    let c = column(from.x + dx * enter);
    let r = row(from.y + dy * enter);
    const toNext = (position: number, cell: number, direction: number, least: number) =>
      direction === 0
        ? Number.POSITIVE_INFINITY
        : (least + (cell + (direction > 0 ? 1 : 0)) * size - position) / direction;
    while (c >= 0 && c < columns && r >= 0 && r < rows) {
      const across = toNext(from.x, c, dx, box.minX);
      const along = toNext(from.y, r, dy, box.minY);
      const out = Math.min(across, along);
      for (const i of cells[r * columns + c]!) {
        if (asked[i] === question) continue;
        asked[i] = question;
        const at = crossingDistance(from, to, segments[i]!, length);
        if (at !== null) found.push({ distanceMetres: at, segment: i });
      }
      if (out > leave || (firstOnly && found.some(({ distanceMetres }) => distanceMetres <= out))) break;
      if (across <= along) c += Math.sign(dx);
      else r += Math.sign(dy);
    }
    return found.sort((a, b) => a.distanceMetres - b.distanceMetres);
  }

  return {
    nearest,
    within,
    crossings: (from, to) => walk(from, to, false),
    firstCrossing: (from, to) => walk(from, to, true)[0] ?? null,
    isInside: (p) => walk(p, { x: box.maxX + size, y: p.y }, false).length % 2 === 1,
  };
}

interface Box {
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}

function boundingBox(segments: readonly Segment[]): Box {
  let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const segment of segments) {
    for (const { x, y } of segment) {
      minX = Math.min(minX, x);
      minY = Math.min(minY, y);
      maxX = Math.max(maxX, x);
      maxY = Math.max(maxY, y);
    }
  }
  return segments.length === 0 ? { minX: 0, minY: 0, maxX: 0, maxY: 0 } : { minX, minY, maxX, maxY };
}

function outsideBy(p: PlanePoint, box: Box): number {
  return Math.max(0, box.minX - p.x, p.x - box.maxX, box.minY - p.y, p.y - box.maxY);
}

/** The shares of a way at which it enters and leaves a box (Liang and Barsky, 1984), null where it misses it. */
function clippedToBox(from: PlanePoint, to: PlanePoint, box: Box): readonly [number, number] | null {
  let [enter, leave] = [0, 1];
  for (const [start, step, min, max] of [
    [from.x, to.x - from.x, box.minX, box.maxX],
    [from.y, to.y - from.y, box.minY, box.maxY],
  ] as const) {
    if (step === 0) {
      if (start < min || start > max) return null;
      continue;
    }
    const [a, b] = [(min - start) / step, (max - start) / step];
    enter = Math.max(enter, Math.min(a, b));
    leave = Math.min(leave, Math.max(a, b));
  }
  return enter <= leave ? [enter, leave] : null;
}

/**
 * How far along the way it crosses a segment, null where it does not. A corner exactly on the way belongs to the left
 * side, so that a way through a corner crosses one of its two segments and not both.
 */
function crossingDistance(from: PlanePoint, to: PlanePoint, [a, b]: Segment, length: number): number | null {
  const sideA = side(from, to, a);
  const sideB = side(from, to, b);
  if (sideA >= 0 === sideB >= 0) return null;
  const share = sideA / (sideA - sideB);
  const x = a.x + share * (b.x - a.x);
  const y = a.y + share * (b.y - a.y);
  const along = ((x - from.x) * (to.x - from.x) + (y - from.y) * (to.y - from.y)) / length;
  return along >= 0 && along <= length ? along : null;
}
