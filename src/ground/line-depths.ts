import type { Peg } from '../domain/peg.ts';
import type { DepthSurface, DepthThere } from './depth/depth-surface.ts';
import { isLandAhead, type PegStand, pointAhead } from './peg-stand.ts';
import type { LineDepth, ProfilePoint } from './survey.ts';

/** The margin line lies this far out from the water's edge. A choice of the project: anglers say only "down the edge". */
export const MARGIN_OUT_METRES = 0.5;
/** A top kit of two sections and two more: makers differ by half a metre (common practice, no source). */
const TOP_KIT_AND_TWO_METRES = 5;
const PROFILE_STEP_METRES = 0.5;
/** A drawing goes at least as far as the longest pole. */
const SHORTEST_PROFILE_METRES = 16;

interface TradeLine {
  readonly id: string;
  readonly name: string;
  readonly distanceMetres: number;
  readonly by: 'pole' | 'cast';
}

const pole = (metres: number): TradeLine => ({
  id: `pole-${metres}`,
  name: `${metres} m pole`,
  distanceMetres: metres,
  by: 'pole',
});
const cast = (metres: number): TradeLine => ({
  id: `cast-${metres}`,
  name: `${metres} m cast`,
  distanceMetres: metres,
  by: 'cast',
});

/** The lines of the trade beyond the margin, measured from the peg. */
const TRADE_LINES: readonly TradeLine[] = [
  { id: 'top-kit-2', name: 'Top kit + 2 (5 m)', distanceMetres: TOP_KIT_AND_TWO_METRES, by: 'pole' },
  ...[6, 11, 13, 16].map(pole),
  ...[20, 30, 40].map(cast),
];

/** Depths below datum at the trade's lines, straight out from a peg. `surface` is null where the water is not plumbed. */
export function lineDepths(peg: Peg, stand: PegStand, surface: DepthSurface | null): readonly LineDepth[] {
  if (stand.edgeMetres === null) return [];
  const margin = { id: 'margin', name: 'Margin', distanceMetres: stand.edgeMetres + MARGIN_OUT_METRES };
  return [
    { ...margin, ...marginDepth(peg, stand, surface, margin.distanceMetres), permitted: true },
    ...TRADE_LINES.map(({ by, ...line }) => ({
      ...line,
      ...depthAhead(stand, surface, line.distanceMetres),
      permitted: line.distanceMetres <= (by === 'pole' ? stand.reach.poleMetres : stand.reach.castMetres),
    })),
  ];
}

/** The bed straight out from a peg, every half metre and where water and land meet, to the far bank or as far as the peg permits. */
export function depthProfile(stand: PegStand, surface: DepthSurface | null): readonly ProfilePoint[] {
  if (stand.edgeMetres === null) return [];
  const reach = Math.max(stand.reach.poleMetres, stand.reach.castMetres, SHORTEST_PROFILE_METRES);
  const end = Math.min(stand.farBankMetres ?? Number.POSITIVE_INFINITY, reach);
  const distances = new Set([stand.edgeMetres, end, ...stand.changesMetres.filter((metres) => metres <= end)]);
  for (let i = 0; i * PROFILE_STEP_METRES < end; i++) distances.add(i * PROFILE_STEP_METRES);
  return [...distances]
    .sort((a, b) => a - b)
    .map((distanceMetres) => {
      // At the edge itself the depth is the water's, not the bank's.
      const land = isLandAhead(stand, distanceMetres) && !stand.changesMetres.includes(distanceMetres);
      const depthMetres = land ? 0 : (surface?.depthAt(pointAhead(stand, distanceMetres)).depthMetres ?? null);
      return { distanceMetres, depthMetres, land };
    });
}

/** A depth straight out from a peg, or why there is none. */
export type DepthAhead = Pick<LineDepth, 'depthMetres' | 'nearestSoundingMetres' | 'why'>;

/** The record's margin depth is a measurement at this very line. */
function marginDepth(peg: Peg, stand: PegStand, surface: DepthSurface | null, metres: number): DepthAhead {
  if (peg.marginDepthMetres === undefined) return depthAhead(stand, surface, metres);
  return { depthMetres: peg.marginDepthMetres, nearestSoundingMetres: 0 };
}

/** Depth below datum straight out at a distance. The peg must face the water. */
export function depthAhead(stand: PegStand, surface: DepthSurface | null, metres: number): DepthAhead {
  const none = { depthMetres: null, nearestSoundingMetres: null };
  if (metres < stand.edgeMetres!) return { ...none, why: 'short' };
  if (stand.farBankMetres !== null && metres >= stand.farBankMetres) return { ...none, why: 'beyond' };
  if (isLandAhead(stand, metres)) return { ...none, why: 'island' };
  if (surface === null) return { ...none, why: 'unplumbed' };
  const there: DepthThere = surface.depthAt(pointAhead(stand, metres));
  return there.depthMetres === null ? { ...there, why: 'unplumbed' } : there;
}
