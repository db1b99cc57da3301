import type { LatLng } from '../domain/place.ts';
import type { Atlas } from './atlas.ts';

/** Where the pegs of every water stand, for a phone that wants to know which it is at. */
export type PegPlaces = readonly {
  readonly water: string;
  /** The number on the post, latitude, longitude. */
  readonly pegs: readonly (readonly [peg: string, lat: LatLng['lat'], lng: LatLng['lng']])[];
}[];

/** Five decimals are a metre: nearer than any phone knows. */
const DECIMALS = 5;

/** Collects them, water by water. */
export function pegPlaces({ venue, pegsByWater }: Atlas): PegPlaces {
  const rounded = (degrees: number) => Number(degrees.toFixed(DECIMALS));
  return venue.waters.map(({ id, name }) => ({
    water: name,
    pegs: (pegsByWater.get(id) ?? []).map(({ peg, at }) => [peg, rounded(at.lat), rounded(at.lng)] as const),
  }));
}
