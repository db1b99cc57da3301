import type { Peg, PermittedReach } from '../domain/peg.ts';
import { convexHull, isInHull } from './plane/convex-hull.ts';
import type { PlanePoint } from './plane/plane-point.ts';
import { type Sector, sectorToSegmentMetres } from './plane/sector.ts';

/**
 * The least that is swept about an angler who may cast at all, and so holds a rod: 13 ft of it (3.96 m), and 2 m of line
 * below its tip on the way back (common practice, no source).
 */
export const CASTING_ROD_METRES = 6;

/** How far may be fished from a peg: the smaller of the venue's permission and the record's limit, in each respect. */
export function effectiveReach(peg: Pick<Peg, 'limits'>, permitted: PermittedReach): PermittedReach {
  const { limits } = peg;
  return {
    poleMetres: Math.min(permitted.poleMetres, limits.poleMetres ?? Number.POSITIVE_INFINITY),
    castMetres: Math.min(permitted.castMetres, limits.castMetres ?? Number.POSITIVE_INFINITY),
    sectorDegrees: Math.min(permitted.sectorDegrees, limits.sectorDegrees ?? Number.POSITIVE_INFINITY),
  };
}

/** How far is swept ahead of the angler, and behind: a pole is shipped back to its full length, a rod swung back. */
export function sweptMetresOf({ poleMetres, castMetres }: PermittedReach): { ahead: number; behind: number } {
  const behind = Math.max(poleMetres, castMetres > 0 ? CASTING_ROD_METRES : 0);
  return { ahead: Math.max(behind, castMetres), behind };
}

/**
 * What is swept from a platform: ahead, within the fishing sector, as far as the longest of pole, cast and rod; behind,
 * the pole shipped back to its full length, or the rod swung back. Shipped back it lies opposite to any way it can point
 * ahead, so the sector behind is the one ahead turned about. Bearings and points are of the plane.
 */
export function sweptSectors(platform: PlanePoint, facingDegrees: number, reach: PermittedReach): readonly Sector[] {
  const sector = { apex: platform, angleDegrees: reach.sectorDegrees };
  const { ahead, behind } = sweptMetresOf(reach);
  return [
    { ...sector, bearingDegrees: facingDegrees, radiusMetres: ahead },
    { ...sector, bearingDegrees: facingDegrees + 180, radiusMetres: behind },
  ];
}

/**
 * Distance to a line from sectors about a point at the origin, moved to everywhere on a platform; 0 where they meet,
 * infinite for a line without a segment. Exact: instead of the sectors the platform, turned about, is moved along each
 * segment (the Minkowski sum), which sweeps a convex shape.
 */
export function sweptToLineMetres(
  sectors: readonly Sector[],
  line: readonly PlanePoint[],
  platform: readonly PlanePoint[] = [{ x: 0, y: 0 }],
): number {
  let least = Number.POSITIVE_INFINITY;
  for (let i = 1; i < line.length; i++) {
    const ends = [line[i - 1]!, line[i]!];
    const hull = convexHull(platform.flatMap(({ x, y }) => ends.map((end) => ({ x: end.x - x, y: end.y - y }))));
    for (const sector of sectors) {
      if (isInHull(hull, sector.apex)) return 0;
      for (let k = 0; k < hull.length; k++) {
        least = Math.min(least, sectorToSegmentMetres(sector, hull[k]!, hull[(k + 1) % hull.length]!));
      }
    }
  }
  return least;
}
