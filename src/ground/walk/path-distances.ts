import type { WaterMap } from '../../domain/map.ts';
import type { LatLng } from '../../domain/place.ts';
import { localPlane } from '../geodesy/local-plane.ts';
import { pathGraph } from './path-graph.ts';
import { arrivalAt, pathSnapOf } from './path-snap.ts';
import { shortestPaths } from './shortest-paths.ts';

/**
 * Walking distances between points along the drawn paths, in metres, by row and column in the order given. A point is
 * joined to its nearest path within 30 m; null where the paths do not join two points, 0 from a point to itself.
 */
export function pathDistancesMetres(
  map: Pick<WaterMap, 'paths'>,
  points: readonly LatLng[],
): readonly (readonly (number | null)[])[] {
  const first = points[0];
  if (first === undefined) return [];
  const { toPlane } = localPlane(first);
  const graph = pathGraph(map.paths, toPlane);
  const snaps = points.map((point) => pathSnapOf(graph, toPlane(point)));
  return snaps.map((start, i) => {
    const ways = start === null ? null : shortestPaths(graph, [start]);
    return snaps.map((there, j) => {
      if (i === j) return 0;
      if (start === null || ways === null || there === null) return null;
      return arrivalAt(graph, ways, [start], there)?.metres ?? null;
    });
  });
}
