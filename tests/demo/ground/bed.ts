import { distanceToRing, isInside, type SpotRing } from './ring.ts';
import { distanceBetween, type Spot } from './spot.ts';

/** A rise (or, where negative, a hole) of the bed. */
export interface Hump {
  readonly at: Spot;
  readonly radiusMetres: number;
  readonly riseMetres: number;
}

/** The true bed of a drawn water: depth by distance from the shore, with humps and a slow undulation. */
export interface Bed {
  /** `[distance from shore, depth at datum]`, in metres, in order of distance. */
  readonly shelf: readonly (readonly [number, number])[];
  readonly humps: readonly Hump[];
  readonly undulationMetres: number;
  /** How far the shelf narrows and widens along the bank, as a share, and rises and falls, in metres. */
  readonly shelfWander: { readonly share: number; readonly metres: number };
}

const MIN_DEPTH_METRES = 0.15;

/** Depth below datum at a spot, in metres; null on land. */
export function depthAt(
  water: { readonly outline: SpotRing; readonly islands: readonly { readonly ring: SpotRing }[]; readonly bed: Bed },
  spot: Spot,
): number | null {
  if (!isInside(water.outline, spot) || water.islands.some((island) => isInside(island.ring, spot))) return null;
  let shore = distanceToRing(water.outline, spot);
  for (const island of water.islands) shore = Math.min(shore, distanceToRing(island.ring, spot));
  return bedDepth(water.bed, shore, spot);
}

function bedDepth(bed: Bed, shoreMetres: number, spot: Spot): number {
  const wander = Math.sin(spot.x / 17 + 0.4) * Math.sin(spot.y / 21 + 1.1) + 0.5 * Math.sin((spot.x - spot.y) / 37);
  let depth =
    shelfDepth(bed.shelf, shoreMetres * (1 + bed.shelfWander.share * wander)) + bed.shelfWander.metres * wander;
  for (const hump of bed.humps) {
    const share = distanceBetween(hump.at, spot) / hump.radiusMetres;
    depth -= hump.riseMetres * Math.exp(-share * share);
  }
  const swell = Math.sin(spot.x / 11.3 + 0.7) * Math.cos(spot.y / 9.1) + 0.6 * Math.sin((spot.x + spot.y) / 23);
  // The undulation dies out towards the shore, where the shelf rules.
  depth += bed.undulationMetres * swell * Math.min(1, shoreMetres / 6);
  return Math.max(MIN_DEPTH_METRES, depth);
}

/** Depth of the shelf at a distance from shore, by straight lines between its corners. */
function shelfDepth(shelf: Bed['shelf'], shoreMetres: number): number {
  let [lastDistance, lastDepth] = shelf[0]!;
  for (const [distance, depth] of shelf) {
    if (shoreMetres <= distance) {
      const span = distance - lastDistance;
      return span === 0 ? depth : lastDepth + ((depth - lastDepth) * (shoreMetres - lastDistance)) / span;
    }
    [lastDistance, lastDepth] = [distance, depth];
  }
  return lastDepth;
}
