import type { MapArea, MapPlace } from '../domain/map.ts';
import { wholeTurnDegrees } from './geodesy/ellipsoid.ts';
import { type PegStand, pointAhead } from './peg-stand.ts';
import type { PlanePoint, PlaneRing } from './plane/plane-point.ts';
import { planeBearingDegrees, type Sector } from './plane/sector.ts';
import { pointsInSector } from './plane/sector-points.ts';
import { ringSegments, type SegmentIndex, segmentIndex } from './plane/segment-index.ts';
import type { ReachTarget } from './survey.ts';
import type { WaterPlane } from './water-plane.ts';

/** Things farther off than this are not told. */
export const TOLD_WITHIN_METRES = 100;
/** Dry land of this length between peg and target hides it: a reed stem's width of headland does not. */
const HIDDEN_BY_LAND_METRES = 3;

const AREA_KINDS: readonly MapArea['kind'][] = ['reeds', 'lilies'];
const PLACE_KINDS: readonly MapPlace['kind'][] = ['aerator', 'inlet'];

/** Everything of the map that can lie in front of a water's pegs. */
export interface ReachMarks {
  /** The marks of which some part lies within a distance of a point. */
  readonly within: (p: PlanePoint, metres: number) => readonly Mark[];
}

interface Mark {
  readonly what: string;
  readonly name?: string;
  /** One point for a place. */
  readonly ring: PlaneRing;
  readonly index: SegmentIndex;
}

/** What can lie in front of a water's pegs: its islands, reeds, lilies, aerators and inlets. */
export function reachMarks(water: WaterPlane, areas: readonly MapArea[], places: readonly MapPlace[]): ReachMarks {
  const mark = (what: string, name: string | undefined, ring: PlaneRing): Mark => ({
    what,
    ...(name === undefined ? {} : { name }),
    ring,
    index: segmentIndex(ringSegments([ring])),
  });
  const marks = [
    ...water.islands.map((island) => mark('island', island.name, island.ring)),
    ...areas
      .filter(({ kind }) => AREA_KINDS.includes(kind))
      .map((area) => mark(area.kind, area.name, area.ring.map(water.plane.toPlane))),
    ...places
      .filter(({ kind }) => PLACE_KINDS.includes(kind))
      .map((place) => mark(place.kind, place.name, [water.plane.toPlane(place.at)])),
  ];
  const markOf = marks.flatMap(({ ring }, i) => ring.map(() => i));
  const all = segmentIndex(ringSegments(marks.map(({ ring }) => ring)));
  return {
    within: (p, metres) => [...new Set(all.within(p, metres).map(({ segment }) => marks[markOf[segment]!]!))],
  };
}

/** The far bank straight out and every mark inside the fishing sector within 100 m that no land hides, the nearest first. */
export function reachTargets(stand: PegStand, water: WaterPlane, marks: ReachMarks): readonly ReachTarget[] {
  if (stand.edgeMetres === null) return [];
  const farBank: ReachTarget[] =
    stand.farBankMetres === null
      ? []
      : [
          {
            what: 'far-bank',
            distanceMetres: stand.farBankMetres,
            bearingDegrees: wholeTurnDegrees(stand.facingDegrees - stand.turnDegrees),
            aheadMetres: stand.farBankMetres,
          },
        ];
  const seen = marks.within(stand.at, TOLD_WITHIN_METRES).flatMap((mark) => markInSector(stand, water, mark) ?? []);
  return [...farBank, ...seen].sort((a, b) => a.distanceMetres - b.distanceMetres);
}

function markInSector(stand: PegStand, water: WaterPlane, mark: Mark): ReachTarget | null {
  const { at, facingDegrees, reach } = stand;
  const sector: Sector = {
    apex: at,
    bearingDegrees: facingDegrees,
    angleDegrees: reach.sectorDegrees,
    radiusMetres: TOLD_WITHIN_METRES,
  };
  // Just in the water, so that the peg's own bank hides nothing.
  const edge = pointAhead(stand, stand.edgeMetres! + 0.1);
  const nearest = pointsInSector(sector, mark.ring).find((p) => !isHidden(water, edge, p));
  if (nearest === undefined) return null;
  const ahead = mark.index.firstCrossing(at, pointAhead(stand, stand.farBankMetres ?? TOLD_WITHIN_METRES));
  return {
    what: mark.what,
    ...(mark.name === undefined ? {} : { name: mark.name }),
    distanceMetres: Math.hypot(nearest.x - at.x, nearest.y - at.y),
    bearingDegrees: wholeTurnDegrees(planeBearingDegrees(at, nearest) - stand.turnDegrees),
    ...(ahead === null ? {} : { aheadMetres: ahead.distanceMetres }),
  };
}

/** Whether more than 3 m of dry land lies between the water's edge before a peg and a point. */
function isHidden(water: WaterPlane, edge: PlanePoint, to: PlanePoint): boolean {
  const length = Math.hypot(to.x - edge.x, to.y - edge.y);
  const changes = water.shoreIndex.crossings(edge, to).map(({ distanceMetres }) => distanceMetres);
  let landMetres = 0;
  for (let i = 0; i < changes.length; i += 2) landMetres += (changes[i + 1] ?? length) - changes[i]!;
  return landMetres > HIDDEN_BY_LAND_METRES;
}
