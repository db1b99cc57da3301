import type { Hazard } from '../../domain/hazard.ts';
import { isCurrentLine, namesLine } from '../../ground/lines-of-peg.ts';
import { overheadLinesOf } from '../../ground/stand-off.ts';
import { type Content, mapsOf } from '../content.ts';
import type { Fault } from '../fault.ts';
import { type FieldPath, faultAt, type Source } from '../sources/source.ts';
import { shown } from '../sources/text-place.ts';

/** The fields that only an overhead line has. */
const LINE_FIELDS = [
  ['line', (hazard: Hazard) => hazard.line],
  ['distance', (hazard: Hazard) => hazard.distanceMetres],
  ['bearing', (hazard: Hazard) => hazard.bearingDegrees],
] as const;

/** A recorded line names one that is on a map, and no hazard says of itself what cannot count. */
export function checkLineRecords({ pegs, waters }: Content): readonly Fault[] {
  const lines = overheadLinesOf(mapsOf(waters));
  return pegs.flatMap(({ value: peg, source }) =>
    peg.hazards.flatMap((hazard, index) => {
      const at = (field: string): FieldPath => ['hazards', index, field];
      if (hazard.kind !== 'overhead-line') return misplacedFields(hazard, source, at);
      const isUnknown =
        hazard.line !== undefined && isCurrentLine(hazard) && !lines.some((line) => namesLine(hazard, line));
      return [
        ...(isUnknown
          ? [
              unknownLine(
                hazard.line as string,
                lines.map(({ name }) => name),
                source,
                at('line'),
              ),
            ]
          : []),
        ...(hazard.keptOpen === undefined ? [] : [keptOpenAtLine(source, at('kept-open'))]),
      ];
    }),
  );
}

function misplacedFields(hazard: Hazard, source: Source, at: (field: string) => FieldPath): readonly Fault[] {
  return LINE_FIELDS.filter(([, fieldOf]) => fieldOf(hazard) !== undefined).map(([field]) =>
    faultAt(source, at(field), {
      rule: 'hazard-line-field',
      found: `${field} of a hazard that is no overhead line`,
      expected: 'line, distance and bearing with kind: overhead-line alone',
      mend: 'Take it out, or correct the kind.',
    }),
  );
}

function unknownLine(written: string, names: readonly string[], source: Source, path: FieldPath): Fault {
  return faultAt(source, path, {
    rule: 'line-unknown',
    found: shown(written),
    expected: names.length === 0 ? 'a line on the map, which shows none' : `a line on the map: ${names.join(', ')}`,
    mend: 'Correct it; or take it out, and write distance: how far along the ground from the platform to below its nearest wire.',
  });
}

function keptOpenAtLine(source: Source, path: FieldPath): Fault {
  return faultAt(source, path, {
    rule: 'kept-open-line',
    found: 'kept-open at an overhead line',
    expected: 'a peg that its distance keeps open, or none',
    mend: 'Take it out: nobody keeps a peg open inside the stand-off.',
  });
}
