import { type Peg, pegKey } from '../domain/peg.ts';
import type { LatLng } from '../domain/place.ts';
import { localPlane } from '../ground/geodesy/local-plane.ts';
import type { PlanePoint } from '../ground/plane/plane-point.ts';
import { pointAlong } from '../ground/plane/sector.ts';
import { standOffZone } from '../ground/stand-off-zone.ts';
import { effectiveReach } from '../ground/swept-area.ts';
import { type Atlas, waterOf } from './atlas.ts';
import { LOCATOR_HEIGHT, LOCATOR_WIDTH, type LocatorDrawing } from './drawing/locator.ts';
import type { Point } from './drawing/simplify-line.ts';
import { markOf, standingOfPeg } from './peg-verdicts.ts';

/** Ground a locator shows across. */
const METRES_WIDE = 120;
/** The window stands out over the water, where the angler looks. */
const AHEAD_METRES = 22;
const UNITS_PER_METRE = LOCATOR_WIDTH / METRES_WIDE;

/** The water, its pegs and every overhead line laid out in metres, for all the locators of one water. */
interface LocatorGround {
  readonly outline: readonly PlanePoint[];
  readonly islands: readonly (readonly PlanePoint[])[];
  readonly zones: readonly (readonly PlanePoint[])[];
  readonly overheadLines: readonly (readonly PlanePoint[])[];
  readonly pegs: readonly { readonly peg: Peg; readonly at: PlanePoint }[];
}

/** Makes the locators of one water: lay the ground out once, then draw each peg's window of it. */
export function pegLocators(atlas: Atlas, waterId: string): (peg: Peg) => LocatorDrawing {
  const ground = layOut(atlas, waterId);
  const { permittedReach } = atlas.venue.settings;
  const name = waterOf(atlas, waterId).name;
  return (peg) => {
    const own = ground.pegs.find((each) => each.peg === peg);
    if (own === undefined) throw new RangeError(`pegLocators: ${pegKey(peg.water, peg.peg)} is no peg of ${waterId}`);
    const middle = pointAlong(own.at, peg.facingDegrees, AHEAD_METRES);
    const place = ({ x, y }: PlanePoint): Point => [
      (x - middle.x) * UNITS_PER_METRE + LOCATOR_WIDTH / 2,
      (middle.y - y) * UNITS_PER_METRE + LOCATOR_HEIGHT / 2,
    ];
    const isShown = ([x, y]: Point) => x > -20 && y > -20 && x < LOCATOR_WIDTH + 20 && y < LOCATOR_HEIGHT + 20;
    const reach = effectiveReach(peg, permittedReach);
    const neighbours = ground.pegs
      .filter((each) => each !== own)
      .map((each) => ({
        peg: each.peg.peg,
        at: place(each.at),
        facingDegrees: each.peg.facingDegrees,
        ...markOf(standingOfPeg(atlas, each.peg)),
      }))
      .filter(({ at }) => isShown(at));
    return {
      label: `The bank about peg ${peg.peg} of ${name}, north up`,
      water: ground.outline.map(place),
      islands: ground.islands.map((ring) => ring.map(place)),
      zones: ground.zones.map((ring) => ring.map(place)),
      overheadLines: ground.overheadLines.map((line) => line.map(place)),
      me: place(own.at),
      facingDegrees: peg.facingDegrees,
      sectorDegrees: reach.sectorDegrees,
      reach: Math.max(reach.poleMetres, reach.castMetres) * UNITS_PER_METRE,
      neighbours,
    };
  };
}

function layOut(atlas: Atlas, waterId: string): LocatorGround {
  const { map } = waterOf(atlas, waterId);
  const { toPlane } = localPlane(map.outline[0] ?? { lat: 0, lng: 0 });
  const inPlane = (positions: readonly LatLng[]) => positions.map(toPlane);
  const lines = atlas.venue.waters.flatMap((water) => water.map.overheadLines);
  return {
    outline: inPlane(map.outline),
    islands: map.islands.map(({ ring }) => inPlane(ring)),
    zones: lines.flatMap((line) => standOffZone(line, atlas.venue.settings.standOff).flat().map(inPlane)),
    overheadLines: lines.map(({ line }) => inPlane(line)),
    pegs: (atlas.pegsByWater.get(waterId) ?? []).map((peg) => ({ peg, at: toPlane(peg.at) })),
  };
}
