import type { OverheadLine, Water } from '../domain/map.ts';
import type { Peg, PermittedReach } from '../domain/peg.ts';
import type { LineFact } from '../domain/peg-verdict.ts';
import type { StandOffRule, VenueSettings } from '../domain/venue.ts';
import { wholeTurnDegrees } from './geodesy/ellipsoid.ts';
import { localPlane } from './geodesy/local-plane.ts';
import { lineAllowanceMetres } from './line-allowance.ts';
import type { PlanePoint } from './plane/plane-point.ts';
import { footOnPolyline } from './plane/polyline-distance.ts';
import { planeBearingDegrees } from './plane/sector.ts';
import { platformShape } from './platform-shape.ts';
import type { LineStandOff } from './survey.ts';
import { effectiveReach, sweptSectors, sweptToLineMetres } from './swept-area.ts';

/** The parts of a venue's settings that the stand-off rests on. */
export type StandOffSettings = Pick<VenueSettings, 'standOff' | 'permittedReach'>;

/** Up to a fifth above the stand-off a peg asks for a measured check. */
export const NEAR_SHARE = 1.2;

/** An overhead line as it lies about one peg, the peg's position at the plane's origin. */
export interface LineAtPeg {
  readonly overhead: OverheadLine;
  readonly line: readonly PlanePoint[];
  /** What is taken off every distance to it: the allowances, and how much nearer it was measured than mapped. */
  readonly takenOffMetres: number;
  readonly mappedMetres: number;
  readonly bearingDegrees: number;
}

const POSITION: PlanePoint = { x: 0, y: 0 };
const NOTHING_SWEPT: PermittedReach = { poleMetres: 0, castMetres: 0, sectorDegrees: 360 };

/** Every overhead line drawn for any water: a line on one water's map counts for the pegs of the next. */
export function overheadLinesOf(waters: readonly Pick<Water, 'map'>[]): readonly OverheadLine[] {
  return waters.flatMap((water) => water.map.overheadLines);
}

/**
 * How every overhead line stands to a peg, the nearest first. The rule is the project's (design: safety): geodesic
 * distance along the ground to the mapped centre line, less half the conductor spread, less the map error; a line's
 * height and voltage change nothing. Where the record holds a smaller measured distance, that counts, and the swept
 * area is taken to lie nearer by as much.
 */
export function standOffsOfPeg(
  peg: Peg,
  lines: readonly OverheadLine[],
  settings: StandOffSettings,
): readonly LineStandOff[] {
  const reach = effectiveReach(peg, settings.permittedReach);
  return linesAtPeg(peg, lines, settings.standOff)
    .map((line) => standOff(line, peg, reach, settings.standOff))
    .sort((a, b) => a.platformMetres - b.platformMetres);
}

/** What counts against the stand-off: platform or swept area, whichever is nearer, after the allowances. */
export function countsMetres({ platformMetres, sweptMetres }: LineStandOff): number {
  return Math.min(platformMetres, sweptMetres);
}

/** Whether an open peg is outside the stand-off by so little that the map alone should not carry it, and nobody measured it yet. */
export function needsMeasuredDistance(
  peg: Pick<Peg, 'status' | 'measuredLineDistance'>,
  standOffs: readonly LineStandOff[],
): boolean {
  return (
    peg.status === 'open' &&
    peg.measuredLineDistance === undefined &&
    standOffs.some(({ verdict }) => verdict === 'near')
  );
}

/** Within two stand-offs, as mapped, a tape belongs in the bag and the network operator is asked before any work (this project's choice). */
const LINE_ABOUT_STAND_OFFS = 2;

/** Whether a line is near enough to a peg to be measured on a round, and to be thought of before anyone cuts there. */
export function hasLineAbout({ standOffs, lines }: LinesAbout, rule: StandOffRule): boolean {
  return (
    lines.some(({ source }) => source !== 'map') ||
    standOffs.some(({ mappedMetres }) => mappedMetres < rule.metres * LINE_ABOUT_STAND_OFFS)
  );
}

/** What is known of overhead lines about a peg: as the maps have them, and all together. */
interface LinesAbout {
  readonly standOffs: readonly LineStandOff[];
  readonly lines: readonly LineFact[];
}

/** The least distance, after everything is taken off, from what a reach sweeps from anywhere on the platform to any of the lines. */
export function sweptMetres(
  lines: readonly Pick<LineAtPeg, 'line' | 'takenOffMetres'>[],
  peg: Pick<Peg, 'platform' | 'facingDegrees' | 'isFacingEstimated'>,
  reach: PermittedReach,
): number {
  // A facing nobody wrote down may be wrong, and must not be what keeps a peg open.
  const swept = peg.isFacingEstimated ? { ...reach, sectorDegrees: 360 } : reach;
  const sectors = sweptSectors(POSITION, peg.facingDegrees, swept);
  const shape = platformShape(peg);
  return Math.min(
    Number.POSITIVE_INFINITY,
    ...lines.map(({ line, takenOffMetres }) => Math.max(0, sweptToLineMetres(sectors, line, shape) - takenOffMetres)),
  );
}

/** Lays the lines out about a peg; a line without a segment is no line. */
export function linesAtPeg(peg: Peg, lines: readonly OverheadLine[], rule: StandOffRule): readonly LineAtPeg[] {
  const plane = localPlane(peg.at);
  const laidOut = lines.flatMap((overhead) => {
    const line = overhead.line.map(plane.toPlane);
    const foot = line.length < 2 ? null : footOnPolyline(POSITION, line);
    if (foot === null) return [];
    return [
      {
        overhead,
        line,
        mappedMetres: foot.distanceMetres,
        bearingDegrees: wholeTurnDegrees(planeBearingDegrees(POSITION, foot)),
        takenOffMetres: lineAllowanceMetres(overhead, rule),
      },
    ];
  });
  const measured = peg.measuredLineDistance?.distanceMetres;
  if (measured === undefined) return laidOut;
  const leftMetres = (line: LineAtPeg) => line.mappedMetres - line.takenOffMetres;
  // The tape went to the nearest conductor: with an error of the map on either line, that may be any of these.
  const mayBeNearest = Math.min(...laidOut.map(leftMetres)) + 2 * rule.mapErrorMetres;
  return laidOut.map((line) =>
    leftMetres(line) <= mayBeNearest
      ? { ...line, takenOffMetres: Math.max(line.takenOffMetres, line.mappedMetres - measured) }
      : line,
  );
}

function standOff(line: LineAtPeg, peg: Peg, reach: PermittedReach, rule: StandOffRule): LineStandOff {
  const { overhead, mappedMetres, bearingDegrees } = line;
  const platformMetres = sweptMetres([line], peg, NOTHING_SWEPT);
  const swept = sweptMetres([line], peg, reach);
  const least = Math.min(platformMetres, swept);
  return {
    line: overhead.id,
    name: overhead.name,
    ...(overhead.voltageVolts === undefined ? {} : { voltageVolts: overhead.voltageVolts }),
    ...(overhead.heightMetres === undefined ? {} : { heightMetres: overhead.heightMetres }),
    mappedMetres,
    bearingDegrees,
    platformMetres,
    sweptMetres: swept,
    verdict: least < rule.metres ? 'inside' : least < rule.metres * NEAR_SHARE ? 'near' : 'clear',
  };
}
