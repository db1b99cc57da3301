import type { MapPath } from '../../domain/map.ts';
import type { LatLng } from '../../domain/place.ts';
import type { PlanePoint } from '../plane/plane-point.ts';
import type { PathEdge, PathGraph } from './path-graph.ts';
import { arrivalAt, nodesBack, pathSnapOf } from './path-snap.ts';
import { shortestPaths } from './shortest-paths.ts';

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
      if (there === null || arrival === null) return null;
      const behind = nodesBack(graph, ways, arrival).flatMap((node) => (ways.by[node] === -1 ? [] : ways.by[node]!));
      return [...new Set([there.edge, start.edge, ...behind].map((edge) => graph.edges[edge]!.path))];
    };
  };
}
