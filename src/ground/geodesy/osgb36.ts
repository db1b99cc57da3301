import type { LatLng } from '../../domain/place.ts';
import { AIRY_1830, DEGREE, type Ellipsoid, WGS84 } from './ellipsoid.ts';

/** Seven parameters of a change of datum: a shift, three small turns and a scale. */
interface DatumShift {
  readonly metres: Vector;
  readonly turnsRadians: Vector;
  readonly scale: number;
}

type Vector = readonly [number, number, number];

const ARC_SECOND = DEGREE / 3600;

/** WGS 84 to OSGB36 (Ordnance Survey, A Guide to Coordinate Systems in Great Britain, section 6.6): good to about 5 m. */
const WGS84_TO_OSGB36: DatumShift = {
  metres: [-446.448, 125.157, -542.06],
  turnsRadians: [-0.1502 * ARC_SECOND, -0.247 * ARC_SECOND, -0.8421 * ARC_SECOND],
  scale: 20.4894e-6,
};

/** The same place in OSGB36 latitude and longitude; heights are left out of account. */
export function toOsgb36(position: LatLng): LatLng {
  return toGeographic(shifted(toCartesian(position, WGS84), WGS84_TO_OSGB36), AIRY_1830);
}

/**
 * The WGS 84 place of an OSGB36 latitude and longitude: the point that `toOsgb36` brings there, found by correcting a
 * first guess. Three rounds bring it within a micrometre, where the shift turned about by its signs is 2 cm out.
 */
export function fromOsgb36(position: LatLng): LatLng {
  let guess = position;
  for (let round = 0; round < 4; round++) {
    const there = toOsgb36(guess);
    guess = { lat: guess.lat + position.lat - there.lat, lng: guess.lng + position.lng - there.lng };
  }
  return guess;
}

function toCartesian({ lat, lng }: LatLng, { equatorialRadiusMetres, flattening }: Ellipsoid): Vector {
  const e2 = flattening * (2 - flattening);
  const sin = Math.sin(lat * DEGREE);
  const nu = equatorialRadiusMetres / Math.sqrt(1 - e2 * sin * sin);
  const across = nu * Math.cos(lat * DEGREE);
  return [across * Math.cos(lng * DEGREE), across * Math.sin(lng * DEGREE), nu * (1 - e2) * sin];
}

function toGeographic([x, y, z]: Vector, { equatorialRadiusMetres, flattening }: Ellipsoid): LatLng {
  const e2 = flattening * (2 - flattening);
  const across = Math.hypot(x, y);
  let phi = Math.atan2(z, across * (1 - e2));
  for (let round = 0; round < 10; round++) {
    const nu = equatorialRadiusMetres / Math.sqrt(1 - e2 * Math.sin(phi) ** 2);
    phi = Math.atan2(z + e2 * nu * Math.sin(phi), across);
  }
  return { lat: phi / DEGREE, lng: Math.atan2(y, x) / DEGREE };
}

/** The position-vector rule, small angles (the guide's annex B.6). */
function shifted([x, y, z]: Vector, { metres, turnsRadians, scale }: DatumShift): Vector {
  const [rx, ry, rz] = turnsRadians;
  return [
    metres[0] + x * (1 + scale) - y * rz + z * ry,
    metres[1] + x * rz + y * (1 + scale) - z * rx,
    metres[2] - x * ry + y * rx + z * (1 + scale),
  ];
}
