import type { DrawnPath } from './drawn-water.ts';
import { bankPlace, distanceToRing, ringLength, type SpotRing } from './ring.ts';
import { distanceBetween, type Spot, spotAt } from './spot.ts';

/** A path behind all pegs: the outline set back inland, without the places where that would fall back on the bank. */
export function circuit(outline: SpotRing, setBackMetres: number, spacingMetres: number): Spot[] {
  const length = ringLength(outline);
  const count = Math.round(length / spacingMetres);
  const spots: Spot[] = [];
  for (let i = 0; i < count; i++) {
    const place = bankPlace(outline, (i * length) / count, 6);
    const spot = spotAt(place.at, place.inwardDegrees + 180, setBackMetres);
    const isClear = distanceToRing(outline, spot) > setBackMetres * 0.85;
    const last = spots[spots.length - 1];
    if (isClear && (last === undefined || distanceBetween(last, spot) > spacingMetres * 0.4)) spots.push(spot);
  }
  return spots;
}

/** What a club knows of one stretch of a circuit, and where it begins; it ends where the next one begins. */
export type CircuitStretch = Omit<DrawnPath, 'line'> & { readonly from: Spot };

/** Index of the spot of a line nearest to another spot. */
export function nearestIndex(line: readonly Spot[], spot: Spot): number {
  return line.reduce(
    (best, candidate, i) => (distanceBetween(candidate, spot) < distanceBetween(line[best]!, spot) ? i : best),
    0,
  );
}

/** Cuts a circuit into named paths that share their end spots, so that they connect. */
export function circuitPaths(ring: readonly Spot[], stretches: readonly CircuitStretch[]): DrawnPath[] {
  const starts = stretches.map((stretch) => nearestIndex(ring, stretch.from));
  return stretches.map(({ from: _from, ...known }, i) => {
    const end = starts[(i + 1) % starts.length]!;
    const line: Spot[] = [];
    for (let at = starts[i]!; ; at = (at + 1) % ring.length) {
      line.push(ring[at]!);
      if (at === end && line.length > 1) break;
    }
    return { ...known, line };
  });
}
