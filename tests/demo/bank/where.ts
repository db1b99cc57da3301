import type { DrawnWater } from '../ground/drawn-water.ts';
import { isInSector } from '../ground/in-front.ts';
import type { PegStand } from '../ground/peg-stands.ts';
import { distanceToRing } from '../ground/ring.ts';
import { bearingTo, distanceBetween } from '../ground/spot.ts';

/** One line that says where a peg is: its bank, and the nearest thing worth naming. */
export function whereOf(water: DrawnWater, stand: PegStand): string {
  const side = sideOf(water, stand);
  const detail = detailOf(water, stand);
  return detail === null ? side : `${side}, ${detail}`;
}

/** The bank's name on the drawing; without one, by the compass: a peg that faces north sits on the south bank. */
function sideOf(water: DrawnWater, stand: PegStand): string {
  const named = water.banks.find((bank) => Number(stand.peg) <= bank.lastPeg);
  return (
    named?.name ?? ['South bank', 'West bank', 'North bank', 'East bank'][Math.round(stand.facingDegrees / 90) % 4]!
  );
}

function detailOf(water: DrawnWater, stand: PegStand): string | null {
  if (stand.features.includes('corner')) return 'in the corner';
  if (stand.features.includes('point')) return 'on the point';
  const island = water.islands
    .filter((candidate) =>
      candidate.ring.some((spot) => isInSector(bearingTo(stand.at, spot), stand.facingDegrees, 90)),
    )
    .sort((a, b) => distanceToRing(a.ring, stand.at) - distanceToRing(b.ring, stand.at))[0];
  if (stand.features.includes('island') && island !== undefined) return `opposite ${island.name}`;
  if (stand.features.includes('bay')) return 'in the bay';
  const area = [...water.areas]
    .filter((candidate) => candidate.kind !== 'building' && candidate.name !== undefined)
    .sort((a, b) => distanceToRing(a.ring, stand.at) - distanceToRing(b.ring, stand.at))[0];
  if (area !== undefined && distanceToRing(area.ring, stand.at) <= 12) return `by the ${area.name!.toLowerCase()}`;
  const place = [...water.places]
    .filter((candidate) => ['inlet', 'outlet', 'gauge'].includes(candidate.kind))
    .sort((a, b) => distanceBetween(a.at, stand.at) - distanceBetween(b.at, stand.at))[0];
  if (place !== undefined && distanceBetween(place.at, stand.at) <= 14) return `by the ${place.name.toLowerCase()}`;
  return null;
}
