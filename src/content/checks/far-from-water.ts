import type { LatLng } from '../../domain/place.ts';
import type { WaterPlane } from '../../ground/water-plane.ts';

/** Nothing of a water lies farther from its outline than this; what does has a slip in its figures. */
export const FAR_METRES = 5000;

/** How far a position lies from a water's outline; 0 inside it. */
export function metresFromOutline(water: WaterPlane, at: LatLng): number {
  const p = water.plane.toPlane(at);
  return water.outlineIndex.isInside(p) ? 0 : water.outlineIndex.nearest(p)!.distanceMetres;
}

/** Whether a position is far from the water but would be near it with latitude and longitude swapped. */
export function isSwapped(water: WaterPlane, at: LatLng): boolean {
  // A longitude beyond 90 can be no latitude.
  if (Math.abs(at.lng) > 90 || metresFromOutline(water, at) <= FAR_METRES) return false;
  return metresFromOutline(water, { lat: at.lng, lng: at.lat }) <= FAR_METRES;
}

/** A distance for a person: metres below two kilometres, whole kilometres above. */
export function shownMetres(metres: number): string {
  return metres < 2000 ? `${Math.round(metres)} m` : `${Math.round(metres / 1000)} km`;
}
