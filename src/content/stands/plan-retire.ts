import { addDays, type Day } from '../../domain/day.ts';
import { pegKey } from '../../domain/peg.ts';
import { standId } from '../../domain/stand.ts';
import type { Content } from '../content.ts';
import { didYouMean } from '../did-you-mean.ts';
import type { Fault } from '../fault.ts';
import type { StagedFiles } from '../intake/staged-files.ts';
import { faultAt, faultOfFile } from '../sources/source.ts';
import { recordPath } from './plan-repeg.ts';
import { recordsSince } from './records-since.ts';
import { daysInTheWay, idEdits, moveGuideDay, type StandPlan, stageRecord } from './stand-change.ts';

/** A stand to be taken out of the guide. */
export interface Retiring {
  readonly water: string;
  readonly peg: string;
  /** The first day on which nobody can fish it. */
  readonly from: Day;
  readonly why?: string;
}

/** Works out a retirement: the record keeps all it says, loses its number to `was` and is called after its id. */
export function planRetire(content: Content, { water, peg, from, why }: Retiring, staged: StagedFiles): StandPlan {
  const key = pegKey(water, peg);
  const stand = content.pegs.find(({ value }) => pegKey(value.water, value.peg) === key);
  if (stand === undefined) return { faults: [notThere(content, water, peg)], changes: [] };
  const path = recordPath(water, standId(stand.value));
  const faults = [...daysInTheWay(stand, from), ...recordsSince(content, [stand], from)];
  if (faults.length > 0) return { faults, changes: [] };
  const edited = stageRecord(staged, staged.text(stand.source.file)!, stand, path, [
    ...idEdits(stand.value),
    { kind: 'append', path: ['was'], item: { peg, until: addDays(from, -1) } },
    { kind: 'set', path: ['retired', 'from'], value: from },
    ...(why === undefined ? [] : [{ kind: 'set', path: ['retired', 'why'], value: why } as const]),
    { kind: 'remove', path: ['peg'] },
  ]);
  if (edited.length > 0) return { faults: edited, changes: [] };
  staged.takeAway(stand.source.file);
  return {
    faults: [],
    changes: [
      {
        where: key,
        words: `retired from ${from}${why === undefined ? '' : ` (${why})`}: in the guide no more, its log still counts (${path})`,
      },
      ...moveGuideDay(content, from, staged),
    ],
  };
}

function notThere({ pegs, retired }: Content, water: string, peg: string): Fault {
  const gone = retired.find(
    ({ value }) => value.water === water && (value.peg === peg || value.was?.at(-1)?.peg === peg),
  );
  if (gone !== undefined) {
    return faultAt(gone.source, ['retired'], {
      rule: 'retire-twice',
      found: `peg ${peg} of ${water}, retired from ${gone.value.retired?.from}`,
      expected: 'a peg of today',
      mend: 'Nothing is left to be done; correct its day in that record if it is wrong.',
    });
  }
  const keys = pegs.map(({ value }) => pegKey(value.water, value.peg));
  return faultOfFile('', {
    rule: 'folder-peg',
    found: `"${pegKey(water, peg)}"`,
    expected: 'a peg of today, as WATER/PEG',
    mend: didYouMean(pegKey(water, peg), keys, 'Name it as its record in pegs/ is named: kiln-pool/23.'),
  });
}
