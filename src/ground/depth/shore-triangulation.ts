import type { PlanePoint, PlaneRing } from '../plane/plane-point.ts';
import { nextAround, type Triangulation, triangulated } from './triangulation.ts';

/** A point with a depth. On the shore `measured` tells whether the depth is known there or taken as 0. */
export interface DepthPoint extends PlanePoint {
  readonly depthMetres: number;
  readonly measured: boolean;
}

/** A triangulation no triangle of which crosses the shore, with the depth at every point. */
export interface DepthTriangulation {
  readonly triangulation: Triangulation;
  readonly depths: Float64Array;
  /** 1 for a point whose depth was measured, 0 for one of the shore. */
  readonly measured: Uint8Array;
}

/** The shore gets a point at least every so far. */
const SHORE_SPACING_METRES = 3;
/** Stretches are not split below this; where two shores meet at a sharp angle it ends the splitting. */
const SHORTEST_METRES = 0.05;
const MAX_ROUNDS = 20;

/**
 * Triangulates soundings with the shore, which `dryShore` makes. Every stretch of shore that is no edge of the triangulation is split in two and
 * the whole triangulated again, until all of them are edges (Ruppert, 1995, without his care for angles): then each
 * triangle is all water or all land.
 */
export function shoreTriangulation(
  shore: readonly (readonly DepthPoint[])[],
  soundings: readonly DepthPoint[],
): DepthTriangulation {
  let rings = shore;
  for (let round = 0; ; round++) {
    const points = [...rings.flat(), ...soundings];
    const triangulation = triangulated(points);
    const missing = stretchesWithoutEdge(rings, triangulation);
    if (missing.size === 0 || round === MAX_ROUNDS) {
      return {
        triangulation,
        depths: Float64Array.from(points, ({ depthMetres }) => depthMetres),
        measured: Uint8Array.from(points, ({ measured }) => (measured ? 1 : 0)),
      };
    }
    rings = rings.map((ring) =>
      denser(ring, (length, start) => (missing.has(start) && length > SHORTEST_METRES ? 2 : 1)),
    );
  }
}

/** A ring with each stretch cut into equal parts; the depth runs evenly along a stretch. */
function denser(
  ring: readonly DepthPoint[],
  partsOf: (lengthMetres: number, start: DepthPoint) => number,
): DepthPoint[] {
  return ring.flatMap((a, i) => {
    const b = ring[(i + 1) % ring.length]!;
    const parts = Math.max(1, partsOf(Math.hypot(b.x - a.x, b.y - a.y), a));
    const between = Array.from({ length: parts - 1 }, (_, k): DepthPoint => {
      const share = (k + 1) / parts;
      return {
        x: a.x + share * (b.x - a.x),
        y: a.y + share * (b.y - a.y),
        depthMetres: a.depthMetres + share * (b.depthMetres - a.depthMetres),
        measured: false,
      };
    });
    return [a, ...between];
  });
}

/** The starts of the stretches of shore that are no edge. The rings' points come first in the triangulation, in order. */
function stretchesWithoutEdge(
  rings: readonly (readonly DepthPoint[])[],
  triangulation: Triangulation,
): Set<DepthPoint> {
  const nextOnShore = new Int32Array(triangulation.points.length).fill(-1);
  const missing = new Set<DepthPoint>();
  let first = 0;
  for (const ring of rings) {
    ring.forEach((point, i) => {
      nextOnShore[first + i] = first + ((i + 1) % ring.length);
      missing.add(point);
    });
    first += ring.length;
  }
  const { corners, points } = triangulation;
  for (let e = 0; e < corners.length; e++) {
    const from = corners[e]!;
    const to = corners[nextAround(e)]!;
    if (nextOnShore[from] === to) missing.delete(points[from] as DepthPoint);
    if (nextOnShore[to] === from) missing.delete(points[to] as DepthPoint);
  }
  return missing;
}

/** A shore of depth 0, with a point at least every 3 m: a depth known at one point reaches no farther along it. */
export function dryShore(rings: readonly PlaneRing[]): DepthPoint[][] {
  return rings.map((ring) =>
    denser(
      ring.map(({ x, y }) => ({ x, y, depthMetres: 0, measured: false })),
      (length) => Math.ceil(length / SHORE_SPACING_METRES),
    ),
  );
}
