import { isInside, type SpotRing } from './ring.ts';
import { bearingTo, distanceBetween, type Spot, spotAt } from './spot.ts';

/** Whether a bearing lies inside a sector of this full angle. */
export function isInSector(bearingDegrees: number, facingDegrees: number, sectorDegrees: number): boolean {
  const swing = Math.abs(((bearingDegrees - facingDegrees + 540) % 360) - 180);
  return swing <= sectorDegrees / 2;
}

/** Least distance from a spot to a ring's line within the sector in front of it; null where none of it lies there. */
export function distanceInSector(
  at: Spot,
  facingDegrees: number,
  sectorDegrees: number,
  ring: SpotRing,
): number | null {
  let least: number | null = null;
  for (let i = 0; i < ring.length; i++) {
    const a = ring[i]!;
    const b = ring[(i + 1) % ring.length]!;
    for (let step = 0; step < 4; step++) {
      const spot = { x: a.x + ((b.x - a.x) * step) / 4, y: a.y + ((b.y - a.y) * step) / 4 };
      if (!isInSector(bearingTo(at, spot), facingDegrees, sectorDegrees)) continue;
      const metres = distanceBetween(at, spot);
      if (least === null || metres < least) least = metres;
    }
  }
  return least;
}

/** Distance straight ahead to the far bank of the outline, from a peg on the near one. */
export function farBankMetres(at: Spot, facingDegrees: number, outline: SpotRing): number {
  let metres = 3;
  while (metres < 400 && isInside(outline, spotAt(at, facingDegrees, metres))) metres += 0.5;
  return metres;
}
