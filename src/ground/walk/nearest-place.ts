import type { MapPlace } from '../../domain/map.ts';
import type { LatLng } from '../../domain/place.ts';
import { geodesicBetween } from '../geodesy/geodesic-between.ts';
import type { PlanePoint } from '../plane/plane-point.ts';
import type { NearbyPlace } from '../survey.ts';
import type { PathGraph } from './path-graph.ts';
import { arrivalAt, pathSnapOf } from './path-snap.ts';
import { type PathSnap, shortestPaths } from './shortest-paths.ts';

/**
 * Finds which of some places is nearest to a position: by the way along the paths, or in a straight line to a place that
 * the paths do not join. Null where there is no place at all.
 */
export function nearestPlace(
  places: readonly MapPlace[],
  graph: PathGraph,
  toPlane: (position: LatLng) => PlanePoint,
): (from: LatLng) => NearbyPlace | null {
  const joined: { readonly place: MapPlace; readonly snap: PathSnap }[] = [];
  const apart: MapPlace[] = [];
  for (const place of places) {
    const snap = pathSnapOf(graph, toPlane(place.at));
    if (snap === null) apart.push(place);
    else joined.push({ place, snap });
  }
  const starts = joined.map(({ snap }) => snap);
  const ways = shortestPaths(graph, starts);
  return (from) => {
    const there = pathSnapOf(graph, toPlane(from));
    const walk = there === null ? null : arrivalAt(graph, ways, starts, there);
    const straight = nearestStraight(from, walk === null ? places : apart);
    const isStraightNearer = walk === null || (straight !== null && straight.distanceMetres < walk.metres);
    if (isStraightNearer) return straight;
    return { ...asNearby(from, joined[walk.from]!.place), walkMetres: walk.metres };
  };
}

function nearestStraight(from: LatLng, places: readonly MapPlace[]): NearbyPlace | null {
  return places
    .map((place) => asNearby(from, place))
    .reduce<NearbyPlace | null>(
      (best, place) => (best === null || place.distanceMetres < best.distanceMetres ? place : best),
      null,
    );
}

function asNearby(from: LatLng, place: MapPlace): NearbyPlace {
  const { name, at } = place;
  const { distanceMetres, bearingDegrees } = geodesicBetween(from, at);
  return { name, place, distanceMetres, bearingDegrees, walkMetres: null, at };
}
