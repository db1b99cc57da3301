import type { PlanePoint, PlaneRing } from './plane-point.ts';
import { isWithinAngle, pointAlong, type Sector } from './sector.ts';
import { footOnSegment, side } from './segment-distance.ts';

/** Points of a stretch lie no farther apart than this. */
const SPACING_METRES = 2;

/**
 * Points of a ring's line inside a sector, the nearest to its apex first: of each stretch its start, the foot of the
 * apex, where the sector's sides cut it, and points 2 m apart. The nearest point of the line in the sector is always
 * among them; the rest stand in for it where it is hidden.
 */
export function pointsInSector(sector: Sector, ring: PlaneRing): readonly PlanePoint[] {
  const { apex, radiusMetres } = sector;
  const found: (PlanePoint & { readonly distanceMetres: number })[] = [];
  const add = (p: PlanePoint) => {
    const distanceMetres = Math.hypot(p.x - apex.x, p.y - apex.y);
    if (distanceMetres <= radiusMetres) found.push({ x: p.x, y: p.y, distanceMetres });
  };
  const sides = [-1, 1].map((hand) =>
    pointAlong(apex, sector.bearingDegrees + (hand * sector.angleDegrees) / 2, radiusMetres),
  );
  ring.forEach((a, i) => {
    const b = ring[(i + 1) % ring.length]!;
    const foot = footOnSegment(apex, a, b);
    if (foot.distanceMetres > radiusMetres) return;
    for (const p of [foot, ...pointsAlong(a, b)]) if (isWithinAngle(sector, p)) add(p);
    if (sector.angleDegrees >= 360) return;
    for (const corner of sides) {
      const cut = cutOf(apex, corner, a, b);
      if (cut !== null) add(cut);
    }
  });
  return found.sort((p, q) => p.distanceMetres - q.distanceMetres);
}

/** The start of a stretch and points along it. */
function pointsAlong(a: PlanePoint, b: PlanePoint): readonly PlanePoint[] {
  const parts = Math.max(1, Math.ceil(Math.hypot(b.x - a.x, b.y - a.y) / SPACING_METRES));
  return Array.from({ length: parts }, (_, i) => ({
    x: a.x + (i / parts) * (b.x - a.x),
    y: a.y + (i / parts) * (b.y - a.y),
  }));
}

/** Where the segment from `c` to `d` cuts the one from `a` to `b`, null where it does not. */
function cutOf(a: PlanePoint, b: PlanePoint, c: PlanePoint, d: PlanePoint): PlanePoint | null {
  const [sideC, sideD] = [side(a, b, c), side(a, b, d)];
  if (sideC >= 0 === sideD >= 0 || side(c, d, a) >= 0 === side(c, d, b) >= 0) return null;
  const share = sideC / (sideC - sideD);
  return { x: c.x + share * (d.x - c.x), y: c.y + share * (d.y - c.y) };
}
