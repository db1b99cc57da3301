import { type Hazard, isCurrent } from '../domain/hazard.ts';
import type { OverheadLine } from '../domain/map.ts';
import type { Peg } from '../domain/peg.ts';
import type { LineFact } from '../domain/peg-verdict.ts';
import type { PlanePoint } from './plane/plane-point.ts';
import { pointAlong } from './plane/sector.ts';
import { platformShape } from './platform-shape.ts';
import { countsMetres, type StandOffSettings, standOffsOfPeg, sweptMetres } from './stand-off.ts';
import type { LineStandOff } from './survey.ts';
import { effectiveReach, sweptMetresOf } from './swept-area.ts';

/** How far a line that is known by one point and its bearing is taken to run on to either side of it. */
const RUN_METRES = 500;

/** A line that no map shows, by the distance to its nearest point. */
interface UnmappedLine {
  readonly distanceMetres: number;
  readonly bearingDegrees?: number;
}

/**
 * Every overhead line known about a peg, with the least distance that counts: those of the maps, those that a current
 * hazard of its record names, and one that was measured where no map shows any. A recorded line is its own line unless
 * the record names it by one on the map: a bailiff who writes of new wires means new wires.
 */
export function linesOfPeg(
  peg: Peg,
  mapped: readonly OverheadLine[],
  settings: StandOffSettings,
  standOffs: readonly LineStandOff[] = standOffsOfPeg(peg, mapped, settings),
): readonly LineFact[] {
  const recorded = peg.hazards
    .filter(isCurrentLine)
    .flatMap((hazard) => recordedLine(hazard, peg, standOffs, settings));
  const tape = peg.measuredLineDistance;
  const measured: readonly LineFact[] =
    tape === undefined || standOffs.length > 0
      ? []
      : [{ name: 'the nearest line, measured', source: 'measured', metres: unmappedMetres(tape, peg, settings) }];
  return [
    ...standOffs.map((line): LineFact => ({ name: line.name, source: 'map', metres: countsMetres(line) })),
    ...recorded,
    ...measured,
  ];
}

/** Whether a hazard is an overhead line that is still there. */
export function isCurrentLine(hazard: Pick<Hazard, 'kind' | 'clearedOn'>): boolean {
  return hazard.kind === 'overhead-line' && isCurrent(hazard);
}

/** Whether a record means a line by what the map calls it. */
export function namesLine(
  { line }: Pick<Hazard, 'line'>,
  mapped: { readonly id: string; readonly name: string },
): boolean {
  const named = line?.trim().toLowerCase();
  return named !== undefined && [mapped.id, mapped.name].some((name) => name.trim().toLowerCase() === named);
}

function recordedLine(
  hazard: Hazard,
  peg: Peg,
  standOffs: readonly LineStandOff[],
  settings: StandOffSettings,
): readonly LineFact[] {
  const isMapped = standOffs.some(({ line, name }) => namesLine(hazard, { id: line, name }));
  const known = distanceOf(hazard, peg);
  if (known === null && isMapped) return [];
  return [
    { name: hazard.place, source: 'record', metres: known === null ? null : unmappedMetres(known, peg, settings) },
  ];
}

/** What the record states; else what was measured to the nearest line since this one was found, and so to no nearer one. */
function distanceOf(hazard: Hazard, { measuredLineDistance: tape }: Peg): UnmappedLine | null {
  const { distanceMetres, bearingDegrees } = hazard;
  if (distanceMetres !== undefined) {
    return { distanceMetres, ...(bearingDegrees === undefined ? {} : { bearingDegrees }) };
  }
  if (hazard.line !== undefined || tape === undefined || tape.measuredOn < hazard.foundOn) return null;
  return { distanceMetres: tape.distanceMetres };
}

/**
 * The least distance to a line of which one point is known. Where its bearing is known, the line is taken to run straight
 * across it; where it is not, it may lie in any direction, so the whole reach is taken off. Measured to the nearest wire,
 * it carries no allowance.
 */
function unmappedMetres(
  { distanceMetres, bearingDegrees }: UnmappedLine,
  peg: Peg,
  settings: StandOffSettings,
): number {
  const reach = effectiveReach(peg, settings.permittedReach);
  if (bearingDegrees === undefined) {
    const { ahead } = sweptMetresOf(reach);
    const corner = Math.max(...platformShape(peg).map(({ x, y }) => Math.hypot(x, y)));
    return Math.max(0, distanceMetres - ahead - corner);
  }
  const foot = pointAlong({ x: 0, y: 0 } satisfies PlanePoint, bearingDegrees, distanceMetres);
  const line = [-RUN_METRES, RUN_METRES].map((metres) => pointAlong(foot, bearingDegrees + 90, metres));
  return sweptMetres([{ line, takenOffMetres: 0 }], peg, reach);
}
