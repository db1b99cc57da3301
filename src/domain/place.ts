/** A position on WGS 84, in decimal degrees. GeoJSON's `[lng, lat]` order exists only where GeoJSON is read or written. */
export interface LatLng {
  readonly lat: number;
  readonly lng: number;
}

/** A closed ring of positions; the first is not repeated at the end. */
export type Ring = readonly LatLng[];
