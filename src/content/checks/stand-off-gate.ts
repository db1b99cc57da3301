import type { Hazard } from '../../domain/hazard.ts';
import type { OverheadLine } from '../../domain/map.ts';
import type { Peg } from '../../domain/peg.ts';
import { isInsideStandOff, type LineFact } from '../../domain/peg-verdict.ts';
import { keepOpenLimit } from '../../ground/keep-open-limit.ts';
import { isCurrentLine, linesOfPeg } from '../../ground/lines-of-peg.ts';
import {
  countsMetres,
  NEAR_SHARE,
  needsMeasuredDistance,
  overheadLinesOf,
  type StandOffSettings,
  standOffsOfPeg,
} from '../../ground/stand-off.ts';
import type { KeepOpenLimit, LineStandOff } from '../../ground/survey.ts';
import { type Content, mapsOf } from '../content.ts';
import type { Fault } from '../fault.ts';
import { faultAt, type Placed } from '../sources/source.ts';

/**
 * The gate no build passes: an open peg whose platform, or the area that may be swept from it, lies inside the stand-off
 * of an overhead line, be it on any water's map, in the peg's own record or measured from it. Nothing switches it off. A
 * peg outside by no more than a fifth rests on the map alone until someone measures it: a warning.
 */
export function checkStandOffGate({ pegs, waters, settings }: Content): readonly Fault[] {
  const lines = overheadLinesOf(mapsOf(waters));
  return pegs.flatMap((peg) => (peg.value.status === 'closed' ? [] : pegFaults(peg, lines, settings)));
}

function pegFaults(peg: Placed<Peg>, lines: readonly OverheadLine[], settings: StandOffSettings): readonly Fault[] {
  const { metres: standOffMetres } = settings.standOff;
  const standOffs = standOffsOfPeg(peg.value, lines, settings);
  const inside = standOffs.filter(({ verdict }) => verdict === 'inside');
  const unmapped = linesOfPeg(peg.value, lines, settings, standOffs).filter(
    (line) => line.source !== 'map' && isInsideStandOff(line, standOffMetres),
  );
  if (inside.length + unmapped.length === 0) {
    return needsMeasuredDistance(peg.value, standOffs) ? [unmeasured(peg, standOffs, settings)] : [];
  }
  const limit = inside.length === 0 ? null : keepOpenLimit(peg.value, lines, settings);
  return [
    ...inside.map((line) => gateFault(peg, line, limit, standOffMetres)),
    ...unmapped.map((line) => unmappedFault(peg, line, standOffMetres)),
  ];
}

function gateFault(
  { value: peg, source }: Placed<Peg>,
  line: LineStandOff,
  limit: KeepOpenLimit | null,
  standOffMetres: number,
): Fault {
  return faultAt(source, ['status'], {
    rule: 'stand-off',
    sentence: `Peg ${peg.water}/${peg.peg} is open, ${distances(line, standOffMetres)} ${line.name}; ${standOffMetres} m along the ground is needed from every overhead line, from the platform and from all that may be swept from it.`,
    found: `the open peg ${peg.water}/${peg.peg}, ${distances(line, standOffMetres)} ${line.name}`,
    expected: `${standOffMetres} m along the ground from every overhead line, from the platform and from all that may be swept from it`,
    mend: limit === null ? CLOSE : `Close it, or keep it open with limits: ${limitText(limit)} in its record.`,
  });
}

/** A line that no map shows: in the record, or measured. */
function unmappedFault({ value: peg, source }: Placed<Peg>, line: LineFact, standOffMetres: number): Fault {
  const index = peg.hazards.findIndex((hazard) => isCurrentLine(hazard) && hazard.place === line.name);
  const path = line.source === 'measured' ? ['measured-line-distance', 'distance'] : ['hazards', index, 'kind'];
  const name =
    line.source === 'measured' ? 'the line that was measured' : `the overhead line of its record, "${line.name}"`;
  return faultAt(source, path, {
    rule: 'stand-off-recorded',
    sentence: `Peg ${peg.water}/${peg.peg} is open, ${howNear(line, peg.hazards[index])} ${name}; ${standOffMetres} m along the ground is needed from every overhead line, mapped or not, from the platform and from all that may be swept from it.`,
    found: `the open peg ${peg.water}/${peg.peg}, ${howNear(line, peg.hazards[index])} ${name}`,
    expected: `${standOffMetres} m along the ground from every overhead line, mapped or not, from the platform and from all that may be swept from it`,
    mend:
      line.metres === null
        ? 'Close it until the line is measured: write its distance in the hazard (along the ground from the platform to below the nearest wire, with nothing held up), or line: and its name where it is the one on the map. Wires that are gone get cleared-on.'
        : 'Close it; or draw the line on the map, state its bearing, or limit pole and cast, so that what is swept stays outside.',
  });
}

function howNear(line: LineFact, hazard: Hazard | undefined): string {
  if (line.metres === null) return 'with no distance to';
  const direction = hazard?.bearingDegrees === undefined ? ', in whatever direction it lies' : '';
  return `what may be swept from it coming within ${metres(line.metres)}${direction}, of`;
}

function unmeasured(
  { value: peg, source }: Placed<Peg>,
  standOffs: readonly LineStandOff[],
  { standOff }: StandOffSettings,
): Fault {
  const line = standOffs.toSorted((a, b) => countsMetres(a) - countsMetres(b))[0]!;
  return faultAt(source, ['status'], {
    rule: 'stand-off-unmeasured',
    severity: 'warning',
    sentence: `Peg ${peg.water}/${peg.peg} is open, by the map ${metres(countsMetres(line))} clear of ${line.name}, and nobody has measured it; within ${metres(standOff.metres * NEAR_SHARE)} of a line a measured distance is needed.`,
    found: `the open peg ${peg.water}/${peg.peg}, by the map ${metres(countsMetres(line))} clear of ${line.name}, and no measured distance`,
    expected: `a measured distance for a peg within ${metres(standOff.metres * NEAR_SHARE)} of a line`,
    mend: 'Measure along the ground from the platform to below the nearest wire, with nothing held up, and write measured-line-distance: { distance, measured-on, method } in its record; in doubt close it and ask the network operator.',
  });
}

const CLOSE = 'Close it: write status: closed and a status-reason. No limit of pole, cast or sector keeps it open.';

/** What is told are distances after the allowances for the conductors and the map. */
function distances({ platformMetres, sweptMetres }: LineStandOff, standOffMetres: number): string {
  if (platformMetres < standOffMetres) return `its platform ${metres(platformMetres)} from`;
  return sweptMetres === 0
    ? 'what may be swept from it reaching under'
    : `what may be swept from it coming within ${metres(sweptMetres)} of`;
}

function limitText({ poleMetres, castMetres, sectorDegrees }: KeepOpenLimit): string {
  const parts = [
    poleMetres === undefined ? '' : `pole: ${poleMetres} m`,
    castMetres === undefined ? '' : `cast: ${castMetres} m`,
    sectorDegrees === undefined ? '' : `sector: ${sectorDegrees}`,
  ];
  return `{ ${parts.filter((part) => part !== '').join(', ')} }`;
}

/** Cut, not rounded: 29.96 m is not 30 m. */
function metres(value: number): string {
  return `${(Math.floor(value * 10) / 10).toFixed(1)} m`;
}
