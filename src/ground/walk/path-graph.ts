import type { MapPath } from '../../domain/map.ts';
import type { LatLng } from '../../domain/place.ts';
import type { PlanePoint } from '../plane/plane-point.ts';
import { type Segment, type SegmentIndex, segmentIndex } from '../plane/segment-index.ts';

/** A path that ends this near to another, or to its own beginning, is drawn to join it. */
const ENDS_JOIN_WITHIN_METRES = 2;
/** Another corner of a path joins a path that passes as near as this. */
const CORNERS_JOIN_WITHIN_METRES = 0.5;
/** Points nearer than this are one. */
export const ONE_POINT_METRES = 0.01;

/** A straight stretch of a path between two nodes; where paths join across a gap, the gap. */
export interface PathEdge {
  readonly from: number;
  readonly to: number;
  readonly metres: number;
  readonly path: MapPath;
}

/** Drawn paths as a net of nodes and edges, walked in either direction. */
export interface PathGraph {
  readonly nodes: readonly PlanePoint[];
  readonly edges: readonly PathEdge[];
  /** Edges at each node. */
  readonly edgesAt: readonly (readonly number[])[];
  /** The edges as segments, in the same order. */
  readonly index: SegmentIndex;
}

/** A straight piece of a drawn path. */
interface Piece {
  readonly segment: Segment;
  readonly path: MapPath;
  readonly isFirst: boolean;
  readonly isLast: boolean;
}

/** A gap bridged from a corner to a point of another path. */
interface Join {
  readonly from: PlanePoint;
  readonly to: PlanePoint;
  readonly path: MapPath;
}

/**
 * Joins drawn paths into a net: where two cross, where one ends within 2 m of another, and where a corner lies within
 * half a metre of another. Nothing else joins: a gap of 3 m is a gap.
 */
export function pathGraph(paths: readonly MapPath[], toPlane: (position: LatLng) => PlanePoint): PathGraph {
  const pieces = paths.flatMap((path): Piece[] => {
    const line = path.line.map(toPlane);
    return line.slice(1).map((to, i) => ({
      segment: [line[i]!, to],
      path,
      isFirst: i === 0,
      isLast: i === line.length - 2,
    }));
  });
  const { cuts, joins } = meetings(pieces);
  const nodes = nodeStore();
  const edges: PathEdge[] = [];
  const known = new Set<string>();
  const connect = (a: PlanePoint, b: PlanePoint, path: MapPath) => {
    const [from, to] = [nodes.idOf(a), nodes.idOf(b)];
    const key = `${Math.min(from, to)} ${Math.max(from, to)} ${path.id}`;
    if (from === to || known.has(key)) return;
    known.add(key);
    edges.push({ from, to, metres: Math.hypot(b.x - a.x, b.y - a.y), path });
  };
  pieces.forEach(({ segment: [a, b], path }, i) => {
    const between = [...new Set(cuts[i]!)].filter((share) => share > 0 && share < 1).sort((p, q) => p - q);
    const points = [a, ...between.map((share) => pointBetween(a, b, share)), b];
    for (let k = 1; k < points.length; k++) connect(points[k - 1]!, points[k]!, path);
  });
  for (const { from, to, path } of joins) connect(from, to, path);

  const edgesAt = nodes.points.map((): number[] => []);
  edges.forEach(({ from, to }, e) => {
    edgesAt[from]!.push(e);
    edgesAt[to]!.push(e);
  });
  const index = segmentIndex(edges.map(({ from, to }): Segment => [nodes.points[from]!, nodes.points[to]!]));
  return { nodes: nodes.points, edges, edgesAt, index };
}

function pointBetween(a: PlanePoint, b: PlanePoint, share: number): PlanePoint {
  return { x: a.x + share * (b.x - a.x), y: a.y + share * (b.y - a.y) };
}

/** Where pieces meet: the shares at which each is cut, and the gaps to bridge. */
function meetings(pieces: readonly Piece[]): { readonly cuts: readonly number[][]; readonly joins: readonly Join[] } {
  const index = segmentIndex(pieces.map(({ segment }) => segment));
  const cuts = pieces.map((): number[] => []);
  const joins: Join[] = [];
  pieces.forEach(({ segment: [a, b], path, isFirst, isLast }, i) => {
    const length = Math.hypot(b.x - a.x, b.y - a.y);
    for (const { distanceMetres, segment } of index.crossings(a, b)) {
      if (segment !== i) cuts[i]!.push(distanceMetres / length);
    }
    for (const [corner, isEnd] of [
      [a, isFirst],
      [b, isLast],
    ] as const) {
      const reachMetres = isEnd ? ENDS_JOIN_WITHIN_METRES : CORNERS_JOIN_WITHIN_METRES;
      for (const foot of index.within(corner, reachMetres)) {
        const other = pieces[foot.segment]!;
        // A path joins itself only where an end comes back to it from afar.
        if (other.path === path && (!isEnd || alongPath(pieces, i, foot.segment) <= 4 * ENDS_JOIN_WITHIN_METRES))
          continue;
        cuts[foot.segment]!.push(foot.share);
        joins.push({ from: corner, to: { x: foot.x, y: foot.y }, path: other.path });
      }
    }
  });
  return { cuts, joins };
}

/** The way along a path between two of its pieces, their own lengths left out. */
function alongPath(pieces: readonly Piece[], i: number, j: number): number {
  let metres = 0;
  for (let k = Math.min(i, j) + 1; k < Math.max(i, j); k++) {
    const [a, b] = pieces[k]!.segment;
    metres += Math.hypot(b.x - a.x, b.y - a.y);
  }
  return metres;
}

/** Numbers points, the same number for points that coincide. */
function nodeStore() {
  const points: PlanePoint[] = [];
  const cells = new Map<string, number[]>();
  const cell = (value: number) => Math.floor(value / ONE_POINT_METRES);
  function idOf(p: PlanePoint): number {
    for (let cx = cell(p.x) - 1; cx <= cell(p.x) + 1; cx++) {
      for (let cy = cell(p.y) - 1; cy <= cell(p.y) + 1; cy++) {
        for (const id of cells.get(`${cx} ${cy}`) ?? []) {
          if (Math.hypot(points[id]!.x - p.x, points[id]!.y - p.y) <= ONE_POINT_METRES) return id;
        }
      }
    }
    points.push(p);
    const key = `${cell(p.x)} ${cell(p.y)}`;
    cells.set(key, [...(cells.get(key) ?? []), points.length - 1]);
    return points.length - 1;
  }
  return { points, idOf };
}
