import type { Peg, PermittedReach } from '../domain/peg.ts';
import { destination } from './geodesy/destination.ts';
import type { PlanePoint } from './plane/plane-point.ts';
import { planeBearingDegrees, pointAlong } from './plane/sector.ts';
import type { WaterPlane } from './water-plane.ts';

/** Where an angler sits on a water's plane, and what lies straight out. */
export interface PegStand {
  readonly at: PlanePoint;
  /** Turns a true bearing at the peg into one of the plane: the meridians are not quite parallel to its north. */
  readonly turnDegrees: number;
  readonly facingDegrees: number;
  /** Straight out to the water; null where none begins within 10 m, and the peg does not face the water. */
  readonly edgeMetres: number | null;
  /** Straight out to where the outline is left again; null where the peg does not face the water. */
  readonly farBankMetres: number | null;
  /** Distances straight out at which water turns to land or back, up to the far bank. */
  readonly changesMetres: readonly number[];
  readonly reach: PermittedReach;
}

/** The water must begin within this of the peg, straight out. */
export const WATER_AHEAD_WITHIN_METRES = 10;
/** Longer than any pond a person fishes across. */
const LOOK_AHEAD_METRES = 5000;

/** Places a peg on its water's plane. `reach` is what the peg permits. */
export function pegStand(peg: Peg, water: WaterPlane, reach: PermittedReach): PegStand {
  const at = water.plane.toPlane(peg.at);
  const turnDegrees = planeBearingDegrees(at, water.plane.toPlane(destination(peg.at, 0, 100)));
  const facingDegrees = peg.facingDegrees + turnDegrees;
  const end = pointAlong(at, facingDegrees, LOOK_AHEAD_METRES);
  const changes = water.shoreIndex.crossings(at, end).map(({ distanceMetres }) => distanceMetres);
  const edge = water.isWater(at) ? 0 : (changes[0] ?? Number.POSITIVE_INFINITY);
  const stand = { at, turnDegrees, facingDegrees, reach };
  if (edge > WATER_AHEAD_WITHIN_METRES) return { ...stand, edgeMetres: null, farBankMetres: null, changesMetres: [] };
  const farBank = water.outlineIndex.crossings(at, end).find(({ distanceMetres }) => distanceMetres > edge);
  const farBankMetres = farBank?.distanceMetres ?? null;
  return {
    ...stand,
    edgeMetres: edge,
    farBankMetres,
    changesMetres: changes.filter((metres) => farBankMetres === null || metres <= farBankMetres),
  };
}

/** Whether land lies straight out at a distance: an odd number of changes since the water began. */
export function isLandAhead(stand: PegStand, metres: number): boolean {
  if (stand.edgeMetres === null || metres < stand.edgeMetres) return true;
  const passed = stand.changesMetres.filter((change) => change > stand.edgeMetres! && change <= metres).length;
  return passed % 2 === 1;
}

/** The point straight out at a distance. */
export function pointAhead(stand: PegStand, metres: number): PlanePoint {
  return pointAlong(stand.at, stand.facingDegrees, metres);
}
