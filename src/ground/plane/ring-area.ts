import type { PlaneRing } from './plane-point.ts';

/** Twice-signed area halved: positive where the ring runs anticlockwise (the shoelace formula, from its first point to spare digits). */
export function signedRingArea(ring: PlaneRing): number {
  const origin = ring[0];
  if (origin === undefined) return 0;
  let twice = 0;
  for (let i = 1; i + 1 < ring.length; i++) {
    const a = ring[i]!;
    const b = ring[i + 1]!;
    twice += (a.x - origin.x) * (b.y - origin.y) - (b.x - origin.x) * (a.y - origin.y);
  }
  return twice / 2;
}

/** Area of a ring in square metres, whichever way it runs. */
export function ringAreaSquareMetres(ring: PlaneRing): number {
  return Math.abs(signedRingArea(ring));
}
