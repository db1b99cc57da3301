import { type BoundingTree, boundingTree } from './bounding-tree.ts';
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

/** Segments sorted by where they lie, so that what is near is found without asking all of them. */
export interface SegmentIndex {
  /** The segment nearest to a point, null where there is none at all. */
  readonly nearest: (p: PlanePoint) => NearestSegment | null;
  /** All segments within a distance of a point, in order of their numbers. */
  readonly within: (p: PlanePoint, metres: number) => readonly NearestSegment[];
  /** Every crossing of the way from one point to another, in order. A corner just touched counts twice or not at all. */
  readonly crossings: (from: PlanePoint, to: PlanePoint) => readonly Crossing[];
  /** The first of them, null where there is none. */
  readonly firstCrossing: (from: PlanePoint, to: PlanePoint) => Crossing | null;
  /** Whether rings made of the segments hold the point, by counting crossings: islands inside an outline are outside. */
  readonly isInside: (p: PlanePoint) => boolean;
}

/** The segments of closed rings, one ring after the other. */
export function ringSegments(rings: readonly PlaneRing[]): Segment[] {
  return rings.flatMap((ring) => ring.map((p, i): Segment => [p, ring[(i + 1) % ring.length]!]));
}

/** Sorts segments into an index. */
export function segmentIndex(segments: readonly Segment[]): SegmentIndex {
  const boxes = new Float64Array(4 * segments.length);
  segments.forEach(([a, b], i) => {
    boxes.set([Math.min(a.x, b.x), Math.min(a.y, b.y), Math.max(a.x, b.x), Math.max(a.y, b.y)], 4 * i);
  });
  const tree = boundingTree(boxes);
  const rightOfAll = (tree.boxes[2] ?? 0) + 1;

  function nearest(p: PlanePoint): NearestSegment | null {
    let best = Number.POSITIVE_INFINITY;
    let segment = -1;
    search(
      tree,
      (box) => boxDistance(tree.boxes, box, p),
      () => best,
      (i) => {
        const metres = distanceTo(p, segments[i]!);
        // Of two as near the one of the lower number, whichever way the tree was searched.
        if (metres > best || (metres === best && i >= segment)) return;
        best = metres;
        segment = i;
      },
    );
    if (segment === -1) return null;
    return { ...footOnSegment(p, segments[segment]![0], segments[segment]![1]), segment };
  }

  function within(p: PlanePoint, metres: number): NearestSegment[] {
    const found: NearestSegment[] = [];
    search(
      tree,
      (box) => boxDistance(tree.boxes, box, p),
      () => metres,
      (i) => {
        const foot = footOnSegment(p, segments[i]![0], segments[i]![1]);
        if (foot.distanceMetres <= metres) found.push({ ...foot, segment: i });
      },
    );
    return found.sort((a, b) => a.segment - b.segment);
  }

  function crossed(from: PlanePoint, to: PlanePoint, isFirstOnly: boolean): Crossing[] {
    const length = Math.hypot(to.x - from.x, to.y - from.y);
    const found: Crossing[] = [];
    if (length === 0) return found;
    let first = length;
    search(
      tree,
      (box) => boxEntry(tree.boxes, box, from, to) * length,
      () => first,
      (i) => {
        const distanceMetres = crossingDistance(from, to, segments[i]!, length);
        if (distanceMetres === null) return;
        found.push({ distanceMetres, segment: i });
        if (isFirstOnly) first = Math.min(first, distanceMetres);
      },
    );
    return found.sort((a, b) => a.distanceMetres - b.distanceMetres || a.segment - b.segment);
  }

  return {
    nearest,
    within,
    crossings: (from, to) => crossed(from, to, false),
    firstCrossing: (from, to) => crossed(from, to, true)[0] ?? null,
    isInside: (p) => crossed(p, { x: Math.max(rightOfAll, p.x + 1), y: p.y }, false).length % 2 === 1,
  };
}

/** Visits the items of all boxes that lie no farther than the limit, which may shrink on the way; nearer boxes first. */
function search(
  { firstChild, start, count, items }: BoundingTree,
  distanceOf: (box: number) => number,
  limit: () => number,
  visit: (item: number) => void,
): void {
  const boxes = [0];
  const distances = [distanceOf(0)];
  while (boxes.length > 0) {
    const node = boxes.pop()!;
    if (distances.pop()! > limit()) continue;
    const child = firstChild[node]!;
    if (child === 0) {
      for (let k = 0; k < count[node]!; k++) visit(items[start[node]! + k]!);
      continue;
    }
    const a = distanceOf(child);
    const b = distanceOf(child + 1);
    // The one on top of the pile is looked at next.
    if (a <= b) {
      boxes.push(child + 1, child);
      distances.push(b, a);
    } else {
      boxes.push(child, child + 1);
      distances.push(a, b);
    }
  }
}

function boxDistance(boxes: Float64Array, box: number, { x, y }: PlanePoint): number {
  const dx = Math.max(boxes[4 * box]! - x, 0, x - boxes[4 * box + 2]!);
  const dy = Math.max(boxes[4 * box + 1]! - y, 0, y - boxes[4 * box + 3]!);
  return Math.sqrt(dx * dx + dy * dy);
}

/** The share of a way at which it enters a box, infinite where it misses it (Liang and Barsky, 1984). Asked too often to make a list. */
function boxEntry(boxes: Float64Array, box: number, from: PlanePoint, to: PlanePoint): number {
  const dx = to.x - from.x;
  const dy = to.y - from.y;
  const minX = boxes[4 * box]!;
  const minY = boxes[4 * box + 1]!;
  const maxX = boxes[4 * box + 2]!;
  const maxY = boxes[4 * box + 3]!;
  if ((dx === 0 && (from.x < minX || from.x > maxX)) || (dy === 0 && (from.y < minY || from.y > maxY))) return Infinity;
  const x1 = dx === 0 ? 0 : (minX - from.x) / dx;
  const x2 = dx === 0 ? 1 : (maxX - from.x) / dx;
  const y1 = dy === 0 ? 0 : (minY - from.y) / dy;
  const y2 = dy === 0 ? 1 : (maxY - from.y) / dy;
  const enter = Math.max(0, Math.min(x1, x2), Math.min(y1, y2));
  const leave = Math.min(1, Math.max(x1, x2), Math.max(y1, y2));
  // A hair's breadth of rounding must not lose a segment that lies along the box's own side.
  return enter <= leave + 1e-12 ? enter : Infinity;
}

function distanceTo(p: PlanePoint, segment: Segment): number {
  const a = segment[0];
  const b = segment[1];
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  const squared = dx * dx + dy * dy;
  const share = squared === 0 ? 0 : Math.max(0, Math.min(1, ((p.x - a.x) * dx + (p.y - a.y) * dy) / squared));
  const offX = p.x - a.x - share * dx;
  const offY = p.y - a.y - share * dy;
  return Math.sqrt(offX * offX + offY * offY);
}

/**
 * How far along the way it crosses a segment, null where it does not. A corner exactly on the way belongs to the left
 * side, so that a way through a corner crosses one of its two segments and not both.
 */
function crossingDistance(from: PlanePoint, to: PlanePoint, segment: Segment, length: number): number | null {
  const a = segment[0];
  const b = segment[1];
  const sideA = side(from, to, a);
  const sideB = side(from, to, b);
  if (sideA >= 0 === sideB >= 0) return null;
  const share = sideA / (sideA - sideB);
  const x = a.x + share * (b.x - a.x);
  const y = a.y + share * (b.y - a.y);
  const along = ((x - from.x) * (to.x - from.x) + (y - from.y) * (to.y - from.y)) / length;
  return along >= 0 && along <= length ? along : null;
}
