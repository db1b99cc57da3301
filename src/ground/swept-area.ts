import type { Peg, PermittedReach } from '../domain/peg.ts';
import type { PlanePoint } from './plane/plane-point.ts';
import { type Sector, sectorToSegmentMetres } from './plane/sector.ts';

/** How far may be fished from a peg: the smaller of the venue's permission and the record's limit, in each respect. */
export function effectiveReach(peg: Pick<Peg, 'limits'>, permitted: PermittedReach): PermittedReach {
  const { limits } = peg;
  return {
    poleMetres: Math.min(permitted.poleMetres, limits.poleMetres ?? Number.POSITIVE_INFINITY),
    castMetres: Math.min(permitted.castMetres, limits.castMetres ?? Number.POSITIVE_INFINITY),
    sectorDegrees: Math.min(permitted.sectorDegrees, limits.sectorDegrees ?? Number.POSITIVE_INFINITY),
  };
}

/**
 * What is swept from a platform: ahead, within the fishing sector, as far as the longer of pole and cast; behind, the
 * pole shipped back to its full length. Shipped back it lies opposite to any way it can point ahead, so the sector
 * behind is the one ahead turned about. Bearings and points are of the plane.
 */
export function sweptSectors(platform: PlanePoint, facingDegrees: number, reach: PermittedReach): readonly Sector[] {
  const sector = { apex: platform, angleDegrees: reach.sectorDegrees };
  return [
    { ...sector, bearingDegrees: facingDegrees, radiusMetres: Math.max(reach.poleMetres, reach.castMetres) },
    { ...sector, bearingDegrees: facingDegrees + 180, radiusMetres: reach.poleMetres },
  ];
}

/** Distance from swept sectors to a line, 0 where they meet, infinite for a line without a segment. */
export function sweptToLineMetres(sectors: readonly Sector[], line: readonly PlanePoint[]): number {
  let least = Number.POSITIVE_INFINITY;
  for (const sector of sectors) {
    for (let i = 1; i < line.length; i++) {
      least = Math.min(least, sectorToSegmentMetres(sector, line[i - 1]!, line[i]!));
    }
  }
  return least;
}
