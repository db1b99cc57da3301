import type { Session } from '../../domain/session.ts';
import { formatWeight } from '../../domain/weight.ts';
import type { Content } from '../content.ts';
import type { Fault } from '../fault.ts';
import { type FieldFault, type FieldPath, faultAt, type Source } from '../sources/source.ts';

/** A weighed session has a weight, the others have none, and the parts of a bag do not outweigh it. */
export function checkSessionWeights({ sessions, settings }: Content): readonly Fault[] {
  const faults: Fault[] = [];
  const { scaleDivisionGrams } = settings.ratingRules;
  for (const { value: session, source } of sessions) {
    const add = (path: FieldPath, fault: FieldFault) => faults.push(faultAt(source(), path, fault));
    const { status, weightGrams } = session;
    if (status === 'weighed') {
      if (weightGrams === undefined || weightGrams === 0) add(['weight'], weightMissing(weightGrams));
      // Each part is rounded by itself: by a division of the scale they may exceed the bag.
      else {
        const parts = Object.values(session.parts).map((part) => part.weightGrams ?? 0);
        const sum = parts.reduce((total, grams) => total + grams, 0);
        if (sum > weightGrams + scaleDivisionGrams * parts.length) {
          add(
            [firstPart(session)],
            partsTooHeavy(formatWeight(sum, settings.units), formatWeight(weightGrams, settings.units)),
          );
        }
      }
    } else {
      const isZeroBlank = status === 'blank' && weightGrams === 0;
      if (weightGrams !== undefined && !isZeroBlank) add(['weight'], weightOnStatus(source(), status));
      const column = partWithFish(session);
      if (column !== null) add([column], partOnStatus(source(), column, status));
    }
  }
  return faults;
}

function weightMissing(weightGrams: number | undefined): FieldFault {
  return {
    rule: 'weight-missing',
    found: weightGrams === undefined ? 'no weight' : 'a weight of 0',
    expected: 'a weight above 0 for a weighed session',
    mend: 'Write the weight; for a bag of nothing write the status blank, for one never put on the scales dnw.',
  };
}

function weightOnStatus(source: Source, status: string): FieldFault {
  return {
    rule: 'weight-on-status',
    found: `the weight ${source.writtenAt(['weight']) ?? ''}`,
    expected: status === 'blank' ? 'no weight, or 0, for a blank' : `no weight for the status ${status}`,
    mend: 'Take the weight out, or write the status weighed.',
  };
}

function partOnStatus(source: Source, column: string, status: string): FieldFault {
  return {
    rule: 'weight-on-status',
    found: source.writtenAt([column]) ?? '',
    expected: `no part of a bag for the status ${status}`,
    mend: 'Take it out, or write the status weighed.',
  };
}

function partsTooHeavy(sum: string, weight: string): FieldFault {
  return {
    rule: 'parts-weight',
    found: `parts that weigh ${sum} together`,
    expected: `no more than the bag, ${weight}`,
    mend: 'Correct the bag or one of its parts.',
  };
}

function firstPart({ parts }: Session): string {
  return `${Object.keys(parts)[0]}_weight`;
}

/** The column of a part that claims fish where there can be none. */
function partWithFish({ parts }: Session): string | null {
  for (const [id, { weightGrams, count }] of Object.entries(parts)) {
    if ((weightGrams ?? 0) > 0) return `${id}_weight`;
    if ((count ?? 0) > 0) return `${id}_count`;
  }
  return null;
}
