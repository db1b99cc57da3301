import { COMPASS_POINTS } from '../domain/compass.ts';
import { halfTurnDegrees } from './geodesy/ellipsoid.ts';
import type { PegStand } from './peg-stand.ts';
import { pointAhead } from './peg-stand.ts';
import type { PlanePoint } from './plane/plane-point.ts';
import { pointAlong } from './plane/sector.ts';
import type { WindAtPeg } from './survey.ts';
import type { WaterPlane } from './water-plane.ts';

/** The fetch is measured from a point this far out from the water's edge. */
const OFF_THE_BANK_METRES = 1;
/** Up to this off the facing a wind is in the face; as much off the other way, on the back. */
const QUARTER_DEGREES = 45;
const LONGEST_FETCH_METRES = 20_000;

/** How a wind meets an angler. Both bearings are true; the wind's is the one it blows from. */
export function windMeets(facingDegrees: number, fromDegrees: number): WindAtPeg['meets'] {
  const turn = halfTurnDegrees(fromDegrees - facingDegrees);
  if (Math.abs(turn) <= QUARTER_DEGREES) return 'face';
  if (Math.abs(turn) >= 180 - QUARTER_DEGREES) return 'back';
  return turn > 0 ? 'across from the right' : 'across from the left';
}

/** Open water from a point, looking into the wind, to the first bank of outline or island; 0 on land. Bearing of the plane. */
export function fetchMetres(water: WaterPlane, from: PlanePoint, windFromDegrees: number): number {
  if (!water.isWater(from)) return 0;
  const end = pointAlong(from, windFromDegrees, LONGEST_FETCH_METRES);
  return water.shoreIndex.firstCrossing(from, end)?.distanceMetres ?? 0;
}

/** Wind from each of sixteen directions at a peg. */
export function windsAtPeg(facingDegrees: number, stand: PegStand, water: WaterPlane): readonly WindAtPeg[] {
  const from = stand.edgeMetres === null ? stand.at : pointAhead(stand, stand.edgeMetres + OFF_THE_BANK_METRES);
  return COMPASS_POINTS.map((name, i) => {
    const fromDegrees = i * 22.5;
    return {
      from: name,
      fromDegrees,
      meets: windMeets(facingDegrees, fromDegrees),
      fetchMetres: fetchMetres(water, from, fromDegrees + stand.turnDegrees),
    };
  });
}
