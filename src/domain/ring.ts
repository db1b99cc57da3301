import type { LatLng, Ring } from './place.ts';

/** Corners no farther apart than this in both directions are one: about a millimetre on the ground. */
const SAME_CORNER_DEGREES = 1e-8;

/**
 * A ring as everything behind the reader expects it: no corner drawn twice in a row, and anticlockwise, from the corner it was
 * begun at. What was one spot only is left with fewer than three corners.
 */
export function normalRing(drawn: Ring): Ring {
  const corners = drawn.filter((corner, i) => i === 0 || !isSameCorner(corner, drawn[i - 1]!));
  while (corners.length > 1 && isSameCorner(corners[0]!, corners.at(-1)!)) corners.pop();
  const [first, ...others] = corners;
  return first === undefined || isAnticlockwise(corners) ? corners : [first, ...others.reverse()];
}

/** Whether a ring runs anticlockwise, by the sign of its area (the shoelace formula) in degrees about its first corner; one without area does. */
export function isAnticlockwise(ring: Ring): boolean {
  const flat = ring.map((corner) => ({ x: degreesEast(ring[0]!, corner), y: corner.lat - ring[0]!.lat }));
  const twiceArea = flat.reduce((sum, a, i) => {
    const b = flat[(i + 1) % flat.length]!;
    return sum + a.x * b.y - b.x * a.y;
  }, 0);
  return twiceArea >= 0;
}

function isSameCorner(a: LatLng, b: LatLng): boolean {
  return Math.abs(a.lat - b.lat) < SAME_CORNER_DEGREES && Math.abs(degreesEast(a, b)) < SAME_CORNER_DEGREES;
}

/** How far east one position lies of another, the short way round where the date line lies between. */
function degreesEast(from: LatLng, to: LatLng): number {
  return ((to.lng - from.lng + 540) % 360) - 180;
}
