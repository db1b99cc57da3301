import type { PermittedReach } from '../../../src/domain/peg.ts';
import type { StandOffRule } from '../../../src/domain/venue.ts';
import type { DrawnLine } from './drawn-water.ts';
import { distanceToLine, type Spot, spotAt } from './spot.ts';

/** How a peg stands to the overhead lines: how near, and what of its reach must go for it to stay open. */
export interface LineClearance {
  /** Least distance from the platform to a line's centre; infinite without a line. */
  readonly platformMetres: number;
  /** What the nearest line is called on the map; null without a line. */
  readonly nearestLine: string | null;
  readonly open: boolean;
  /** The limits that keep it open; empty where it needs none. */
  readonly limits: Partial<PermittedReach>;
}

/** Limits a club would try, the mildest first. */
const LIMITS: readonly Partial<PermittedReach>[] = [
  {},
  { poleMetres: 13 },
  { castMetres: 20 },
  { poleMetres: 11, castMetres: 20 },
  { poleMetres: 11, castMetres: 20, sectorDegrees: 60 },
  { poleMetres: 8, castMetres: 20, sectorDegrees: 60 },
];

/** A little more than the rule asks, for positions are rounded in the files. */
const SPARE_METRES = 0.5;

// What stands near a line: the wider platforms of step-free pegs lie elsewhere, and the gate would tell otherwise.
const LONGEST_PLATFORM_METRES = 2.4;
const WIDEST_PLATFORM_METRES = 1.8;

/** Decides whether a peg can stay open beside overhead lines, and with which limits. */
export function lineClearance(
  at: Spot,
  facingDegrees: number,
  lines: readonly DrawnLine[],
  rule: StandOffRule,
  permitted: PermittedReach,
): LineClearance {
  const needed = (line: DrawnLine) =>
    rule.metres + rule.mapErrorMetres + (line.conductorSpreadMetres ?? rule.conductorSpreadMetres) / 2 + SPARE_METRES;
  const byDistance = lines.toSorted((a, b) => distanceToLine(at, a.line) - distanceToLine(at, b.line));
  const [nearest] = byDistance;
  const known = {
    platformMetres: nearest === undefined ? Number.POSITIVE_INFINITY : distanceToLine(at, nearest.line),
    nearestLine: nearest?.name ?? null,
  };
  const platform = platformSpots(at, facingDegrees);
  const isClear = (spots: readonly Spot[]) =>
    lines.every((line) => spots.every((spot) => distanceToLine(spot, line.line) >= needed(line)));
  if (!isClear(platform)) return { ...known, open: false, limits: {} };
  for (const limits of LIMITS) {
    const reach = { ...permitted, ...limits };
    if (isClear(platform.flatMap((spot) => sweptSpots(spot, facingDegrees, reach)))) {
      return { ...known, open: true, limits };
    }
  }
  return { ...known, open: false, limits: {} };
}

/** The corners of the largest platform of the demo, whose position is taken at its end over the water. */
function platformSpots(at: Spot, facingDegrees: number): Spot[] {
  return [0, LONGEST_PLATFORM_METRES].flatMap((back) => {
    const middle = spotAt(at, facingDegrees + 180, back);
    return [90, -90].map((turn) => spotAt(middle, facingDegrees + turn, WIDEST_PLATFORM_METRES / 2));
  });
}

/** The rim of what is swept: pole and cast ahead within the sector, the pole shipped back as far behind. */
function sweptSpots(at: Spot, facingDegrees: number, reach: PermittedReach): Spot[] {
  const half = reach.sectorDegrees / 2;
  const spots: Spot[] = [];
  for (let swing = -half; swing <= half; swing += 3) {
    spots.push(spotAt(at, facingDegrees + swing, Math.max(reach.poleMetres, reach.castMetres)));
    spots.push(spotAt(at, facingDegrees + 180 + swing, reach.poleMetres));
  }
  spots.push(spotAt(at, facingDegrees + half, Math.max(reach.poleMetres, reach.castMetres)));
  spots.push(spotAt(at, facingDegrees + 180 + half, reach.poleMetres));
  return spots;
}
