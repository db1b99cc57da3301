import { distanceBetween, distanceToStretch, type Spot } from './spot.ts';

/** A closed ring on the drawing, counter-clockwise, the first spot not repeated. */
export type SpotRing = readonly Spot[];

/** A place along a ring: where it is, which way the water lies, and how the bank turns there. */
export interface BankPlace {
  readonly at: Spot;
  /** Bearing at right angles to the bank, into the ring. */
  readonly inwardDegrees: number;
}

/** A smooth closed curve through control spots (Catmull and Rom, 1974), with a spot about every `spacingMetres`. */
export function smoothRing(controls: readonly Spot[], spacingMetres: number): SpotRing {
  const fine: Spot[] = [];
  const count = controls.length;
  for (let i = 0; i < count; i++) {
    const [a, b, c, d] = [-1, 0, 1, 2].map((step) => controls[(i + step + count) % count]!);
    for (let step = 0; step < 24; step++) fine.push(between(a!, b!, c!, d!, step / 24));
  }
  const ring = evenly(fine, spacingMetres);
  return signedArea(ring) < 0 ? [...ring].reverse() : ring;
}

function between(a: Spot, b: Spot, c: Spot, d: Spot, t: number): Spot {
  const blend = (p: number, q: number, r: number, s: number) =>
    0.5 * (2 * q + (r - p) * t + (2 * p - 5 * q + 4 * r - s) * t * t + (3 * q - p - 3 * r + s) * t * t * t);
  return { x: blend(a.x, b.x, c.x, d.x), y: blend(a.y, b.y, c.y, d.y) };
}

function evenly(ring: SpotRing, spacingMetres: number): SpotRing {
  const length = ringLength(ring);
  const count = Math.max(8, Math.round(length / spacingMetres));
  return Array.from({ length: count }, (_, i) => bankPlace(ring, (i * length) / count, 0).at);
}

/** Twice the shoelace sum halved: positive for a counter-clockwise ring. Square metres. */
function signedArea(ring: SpotRing): number {
  let sum = 0;
  for (let i = 0; i < ring.length; i++) {
    const a = ring[i]!;
    const b = ring[(i + 1) % ring.length]!;
    sum += a.x * b.y - b.x * a.y;
  }
  return sum / 2;
}

export function ringLength(ring: SpotRing): number {
  let length = 0;
  for (let i = 0; i < ring.length; i++) length += distanceBetween(ring[i]!, ring[(i + 1) % ring.length]!);
  return length;
}

/**
 * The place `alongMetres` round the ring from its first spot. The inward bearing is taken over `smoothMetres` either
 * side, so that one kink of the bank does not turn a peg.
 */
export function bankPlace(ring: SpotRing, alongMetres: number, smoothMetres = 4): BankPlace {
  const at = spotAlong(ring, alongMetres);
  if (smoothMetres === 0) return { at, inwardDegrees: 0 };
  const before = spotAlong(ring, alongMetres - smoothMetres);
  const after = spotAlong(ring, alongMetres + smoothMetres);
  const travel = (Math.atan2(after.x - before.x, after.y - before.y) * 180) / Math.PI;
  return { at, inwardDegrees: (travel - 90 + 720) % 360 };
}

/** How far the bank turns, in degrees, over a stretch centred here: positive where the land folds round the water. */
export function bankTurnDegrees(ring: SpotRing, alongMetres: number, stretchMetres: number): number {
  const first = bankPlace(ring, alongMetres - stretchMetres / 2, 3).inwardDegrees;
  const last = bankPlace(ring, alongMetres + stretchMetres / 2, 3).inwardDegrees;
  // Inward bearings swing anticlockwise, that is down, where a counter-clockwise ring folds round its water.
  return ((first - last + 540) % 360) - 180;
}

function spotAlong(ring: SpotRing, alongMetres: number): Spot {
  const length = ringLength(ring);
  let left = ((alongMetres % length) + length) % length;
  for (let i = 0; i < ring.length; i++) {
    const a = ring[i]!;
    const b = ring[(i + 1) % ring.length]!;
    const span = distanceBetween(a, b);
    if (left <= span) {
      const share = span === 0 ? 0 : left / span;
      return { x: a.x + share * (b.x - a.x), y: a.y + share * (b.y - a.y) };
    }
    left -= span;
  }
  return ring[0]!;
}

/** Whether a spot lies inside the ring (even-odd rule). */
export function isInside(ring: SpotRing, spot: Spot): boolean {
  let inside = false;
  for (let i = 0, j = ring.length - 1; i < ring.length; j = i++) {
    const a = ring[i]!;
    const b = ring[j]!;
    if (a.y > spot.y !== b.y > spot.y && spot.x < ((b.x - a.x) * (spot.y - a.y)) / (b.y - a.y) + a.x) inside = !inside;
  }
  return inside;
}

/** Distance from a spot to the ring's line. */
export function distanceToRing(ring: SpotRing, spot: Spot): number {
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i < ring.length; i++) {
    least = Math.min(least, distanceToStretch(spot, ring[i]!, ring[(i + 1) % ring.length]!));
  }
  return least;
}

/** Where along the ring, in metres from its first spot, it comes nearest to a spot. */
export function nearestAlong(ring: SpotRing, spot: Spot): number {
  const length = ringLength(ring);
  let best = 0;
  let least = Number.POSITIVE_INFINITY;
  for (let along = 0; along < length; along += 0.5) {
    const metres = distanceBetween(bankPlace(ring, along, 0).at, spot);
    if (metres < least) {
      least = metres;
      best = along;
    }
  }
  return best;
}
