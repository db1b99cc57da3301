import type { LatLng } from '../domain/place.ts';
import { localPlane } from '../ground/geodesy/local-plane.ts';
import type { PlanePoint } from '../ground/plane/plane-point.ts';
import type { Point } from './drawing/simplify-line.ts';

/** A window on the ground, north up, and how positions fall into it. */
export interface MapFrame {
  /** In the drawing's user units. */
  readonly width: number;
  readonly height: number;
  readonly unitsPerMetre: number;
  readonly place: (position: LatLng) => Point;
  readonly isInside: (position: LatLng) => boolean;
}

/** The window that holds all `positions` and `padding` metres around them. */
export function mapFrame(positions: readonly LatLng[], paddingMetres: number, unitsPerMetre: number): MapFrame {
  const centre = positions[0] ?? { lat: 0, lng: 0 };
  const { toPlane } = localPlane(centre);
  const box = boxOf(positions.map(toPlane), paddingMetres);
  const place = (position: LatLng): Point => {
    const { x, y } = toPlane(position);
    return [(x - box.west) * unitsPerMetre, (box.north - y) * unitsPerMetre];
  };
  const width = Math.ceil((box.east - box.west) * unitsPerMetre);
  const height = Math.ceil((box.north - box.south) * unitsPerMetre);
  return {
    width,
    height,
    unitsPerMetre,
    place,
    isInside: (position) => {
      const [x, y] = place(position);
      return x >= 0 && y >= 0 && x <= width && y <= height;
    },
  };
}

interface Box {
  readonly west: number;
  readonly east: number;
  readonly south: number;
  readonly north: number;
}

function boxOf(points: readonly PlanePoint[], padding: number): Box {
  let [west, east, south, north] = [0, 0, 0, 0];
  for (const { x, y } of points) {
    west = Math.min(west, x);
    east = Math.max(east, x);
    south = Math.min(south, y);
    north = Math.max(north, y);
  }
  return { west: west - padding, east: east + padding, south: south - padding, north: north + padding };
}
