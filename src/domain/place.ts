/** A position on WGS 84, in decimal degrees. GeoJSON's `[lng, lat]` order exists only where GeoJSON is read or written. */
export interface LatLng {
  readonly lat: number;
  readonly lng: number;
}

/** A closed ring of positions; the first is not repeated at the end. */
export type Ring = readonly LatLng[];

/** A position as GeoJSON writes it. Seven decimals are a centimetre: RFC 7946, section 11.2, holds six enough; rings keep their shape with seven. */
export function geojsonPosition({ lat, lng }: LatLng): [number, number] {
  return [Number(lng.toFixed(7)), Number(lat.toFixed(7))];
}
