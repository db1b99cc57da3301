import type { MapPath, MapPlace, Water } from '../../domain/map.ts';
import type { LatLng } from '../../domain/place.ts';
import type { PlanePoint } from '../plane/plane-point.ts';
import type { PathEdge, PathGraph } from './path-graph.ts';
import { pathsUsed } from './paths-used.ts';
import { isStepFree } from './way-facts.ts';

type PathsTo = (to: LatLng) => readonly MapPath[] | null;

/**
 * Prepares the ways from every car park, and from the places help comes from as they are asked for. The returned function
 * names the paths, as `water/id`, that any way to a place runs along; null where no car park is joined to it.
 */
export function wayPaths(
  waters: readonly Water[],
  graph: PathGraph,
  toPlane: (position: LatLng) => PlanePoint,
  below: ReadonlySet<PathEdge> = new Set(),
): (to: LatLng, helpFrom: readonly MapPlace[]) => readonly string[] | null {
  const from = pathsUsed(graph, toPlane);
  const carParks = waters.flatMap(({ map }) => map.places).filter(({ kind }) => kind === 'car-park');
  const shortest = carParks.map(({ at }) => from(at));
  // A visitor who cannot take steps goes another way: its dangers are theirs too.
  const withoutStep = carParks.map(({ at }) => from(at, ({ path }) => isStepFree(path) !== false));
  // A way round the overhead lines is told first.
  const clear = below.size === 0 ? [] : carParks.map(({ at }) => from(at, (edge) => !below.has(edge)));
  const ofPlace = new Map<MapPlace, PathsTo>();
  const waysOf = (place: MapPlace): PathsTo => {
    const known = ofPlace.get(place) ?? from(place.at);
    ofPlace.set(place, known);
    return known;
  };
  const names = new Map(waters.flatMap(({ id, map }) => map.paths.map((path) => [path, `${id}/${path.id}`] as const)));
  return (to, helpFrom) => {
    if (shortest.every((pathsTo) => pathsTo(to) === null)) return null;
    const used = [...shortest, ...withoutStep, ...clear, ...helpFrom.map(waysOf)].flatMap(
      (pathsTo) => pathsTo(to) ?? [],
    );
    return [...new Set(used)].map((path) => names.get(path)!);
  };
}
