import type { PermittedReach } from '../../../src/domain/peg.ts';
import type { StandOffRule } from '../../../src/domain/venue.ts';
import type { DrawnLine } from './drawn-water.ts';
import { distanceToLine, type Spot, spotAt } from './spot.ts';

/** How a peg stands to the overhead lines: how near, and what of its reach must go for it to stay open. */
export interface LineClearance {
  /** Least distance from the platform to a line's centre; infinite without a line. */
  readonly platformMetres: number;
  readonly open: boolean;
  /** The limits that keep it open; empty where it needs none. */
  readonly limits: Partial<PermittedReach>;
}

/** Limits a club would try, the mildest first. */
const LIMITS: readonly Partial<PermittedReach>[] = [
  {},
  { castMetres: 20 },
  { poleMetres: 11, castMetres: 20 },
  { poleMetres: 11, castMetres: 20, sectorDegrees: 60 },
  { poleMetres: 9.5, castMetres: 20, sectorDegrees: 60 },
];

/** A little more than the rule asks, for positions are rounded in the files. */
const SPARE_METRES = 0.5;

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
  const platformMetres = Math.min(Number.POSITIVE_INFINITY, ...lines.map(({ line }) => distanceToLine(at, line)));
  if (lines.some((line) => distanceToLine(at, line.line) < needed(line)))
    return { platformMetres, open: false, limits: {} };
  for (const limits of LIMITS) {
    const swept = sweptSpots(at, facingDegrees, { ...permitted, ...limits });
    const clear = lines.every((line) => swept.every((spot) => distanceToLine(spot, line.line) >= needed(line)));
    if (clear) return { platformMetres, open: true, limits };
  }
  return { platformMetres, open: false, limits: {} };
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
