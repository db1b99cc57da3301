/** An ellipsoid of revolution. */
export interface Ellipsoid {
  readonly equatorialRadiusMetres: number;
  readonly flattening: number;
}

/** World Geodetic System 1984 (NIMA TR8350.2, 2000). */
export const WGS84: Ellipsoid = { equatorialRadiusMetres: 6_378_137, flattening: 1 / 298.257223563 };

/** Airy 1830, the ellipsoid of OSGB36 (Ordnance Survey, A Guide to Coordinate Systems in Great Britain, annex A). */
export const AIRY_1830: Ellipsoid = {
  equatorialRadiusMetres: 6_377_563.396,
  flattening: (6_377_563.396 - 6_356_256.909) / 6_377_563.396,
};

export const DEGREE = Math.PI / 180;

/** An angle brought into 0 (included) to 360 (left out). */
export function wholeTurnDegrees(degrees: number): number {
  const turned = degrees % 360;
  // A tiny negative angle plus 360 rounds to 360 itself.
  return turned < 0 ? (turned + 360) % 360 : turned + 0;
}

/** An angle brought into −180 (left out) to 180 (included): how far to turn, clockwise positive. */
export function halfTurnDegrees(degrees: number): number {
  const turned = wholeTurnDegrees(degrees);
  return turned > 180 ? turned - 360 : turned;
}
