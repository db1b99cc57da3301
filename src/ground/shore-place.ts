import type { WaterMap } from '../domain/map.ts';
import type { LatLng } from '../domain/place.ts';
import { planeBearingDegrees, pointAlong } from './plane/sector.ts';
import { ringSegments } from './plane/segment-index.ts';
import { type WaterPlane, waterPlane } from './water-plane.ts';

/** A place as the shore sees it. */
export interface ShorePlace {
  /** Square to the nearest stretch of shore, out over the water; clockwise from true north, whole degrees. */
  readonly facingDegrees: number;
  /** To the water's edge; negative where the place lies over the water. */
  readonly metresFromWater: number;
}

/** How far out the water is tried on either side of the shore. */
const TRY_METRES = 0.5;

/** Answers for many places of one water: where each lies by the shore, and which way an angler there would face. */
export function shorePlaces(map: Pick<WaterMap, 'outline' | 'islands'>): (at: LatLng) => ShorePlace {
  const water = waterPlane(map);
  const segments = ringSegments(water.shore);
  return (at) => shorePlace(water, segments, at);
}

function shorePlace(water: WaterPlane, segments: ReturnType<typeof ringSegments>, at: LatLng): ShorePlace {
  const point = water.plane.toPlane(at);
  const foot = water.shoreIndex.nearest(point);
  if (foot === null)
    throw new RangeError('shorePlace: a water without a shore, expected an outline of at least three corners');
  const along = planeBearingDegrees(...segments[foot.segment]!);
  const right = (along + 90) % 360;
  const facing = water.isWater(pointAlong(foot, right, TRY_METRES)) ? right : (along + 270) % 360;
  return {
    facingDegrees: Math.round(facing) % 360,
    metresFromWater: water.isWater(point) ? -foot.distanceMetres : foot.distanceMetres,
  };
}
