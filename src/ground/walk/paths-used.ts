import type { MapPath } from '../../domain/map.ts';
import type { LatLng } from '../../domain/place.ts';
import type { PlanePoint } from '../plane/plane-point.ts';
import type { PathEdge, PathGraph } from './path-graph.ts';
import { type Arrival, arrivalAt, pathSnapOf } from './path-snap.ts';
import { type PathSnap, type ShortestPaths, shortestPaths } from './shortest-paths.ts';

type Usable = (edge: PathEdge) => boolean;

/**
 * The drawn paths that the shortest way from a place to another runs along, each once; null where the paths do not join
 * the two. The ways from one place are worked out once: keep what `from` returns.
 */
export function pathsUsed(
  graph: PathGraph,
  toPlane: (position: LatLng) => PlanePoint,
): (from: LatLng, usable?: Usable) => (to: LatLng) => readonly MapPath[] | null {
  return (from, usable) => {
    const start = pathSnapOf(graph, toPlane(from), usable);
    if (start === null) return () => null;
    const ways = shortestPaths(graph, [start], usable);
    return (to) => {
      const there = pathSnapOf(graph, toPlane(to), usable);
      const arrival = there === null ? null : arrivalAt(graph, ways, [start], there);
      if (there === null || arrival === null || !Number.isFinite(arrival.metres)) return null;
      return pathsBehind(graph, ways, start, there, arrival);
    };
  };
}

/** From the snap back to the beginning, edge by edge. */
function pathsBehind(
  { edges }: PathGraph,
  ways: ShortestPaths,
  start: PathSnap,
  there: PathSnap,
  { node }: Arrival,
): readonly MapPath[] {
  const used = new Set([edges[there.edge]!.path, edges[start.edge]!.path]);
  for (let at = node; at !== -1 && ways.by[at] !== -1; ) {
    const edge = edges[ways.by[at]!]!;
    used.add(edge.path);
    at = edge.from === at ? edge.to : edge.from;
  }
  return [...used];
}
