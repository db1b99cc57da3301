import type { WaterMap } from '../../src/domain/map.ts';
import type { LatLng } from '../../src/domain/place.ts';
import { localPlane } from '../../src/ground/geodesy/local-plane.ts';

/** Where the ponds of these tests lie: metres east and north of here are written as `spot(x, y)`. */
const MIDDLE: LatLng = { lat: 52.75, lng: -0.05 };
const { toPosition } = localPlane(MIDDLE);

/** The position so many metres east and north of the middle of the example pond. */
export function spot(x: number, y: number): LatLng {
  return toPosition({ x, y });
}

/** A rectangle, anticlockwise from its south-west corner. */
export function rectangle(west: number, south: number, east: number, north: number): LatLng[] {
  return [spot(west, south), spot(east, south), spot(east, north), spot(west, north)];
}

/** A pond 100 m from west to east and 60 m from south to north, its middle at `spot(0, 0)`, with nothing else drawn. */
export function pondMap(changes: Partial<WaterMap> = {}): WaterMap {
  return {
    outline: rectangle(-50, -30, 50, 30),
    islands: [],
    overheadLines: [],
    paths: [],
    places: [],
    areas: [],
    ...changes,
  };
}
