import { addDays, type Day } from '../../domain/day.ts';
import { type Peg, pegKey } from '../../domain/peg.ts';
import type { Content } from '../content.ts';
import { didYouMean } from '../did-you-mean.ts';
import type { FieldEdit } from '../edit-front-matter.ts';
import type { Fault } from '../fault.ts';
import type { StagedFiles } from '../intake/staged-files.ts';
import { faultAt, faultOfFile, type Placed } from '../sources/source.ts';
import { isInRange, type PegRange, shiftedNumber } from './peg-range.ts';
import { recordsSince } from './records-since.ts';
import { daysInTheWay, idEdits, moveGuideDay, type StandChange, type StandPlan, stageRecord } from './stand-change.ts';

/** Numbers to be painted anew: all of a run on one water go up or down by so many. */
export interface Repegging {
  readonly water: string;
  readonly range: PegRange;
  readonly shift: number;
  /** The first day of the new numbers. */
  readonly from: Day;
}

interface Renumbered {
  readonly stand: Placed<Peg>;
  readonly number: string;
}

/**
 * Works out a re-pegging: every stand of the run keeps its record and id, its number goes into `was`, the file takes the new
 * name. Nothing of the log is touched, since it names the numbers of its own day.
 */
export function planRepeg(content: Content, request: Repegging, staged: StagedFiles): StandPlan {
  const { water, range, shift, from } = request;
  if (!content.known.waters.has(water)) return refused([noSuchWater(content, water)]);
  const ofWater = content.pegs.filter(({ value }) => value.water === water);
  const inRun = ofWater.filter(({ value }) => isInRange(value, range));
  if (inRun.length === 0) return refused([noSuchPegs(ofWater, water)]);
  const renumbered = inRun.flatMap((stand): Renumbered[] => {
    const number = shiftedNumber(stand.value.peg, shift);
    return number === null ? [] : [{ stand, number }];
  });
  const faults = [
    ...inRun.filter(({ value }) => shiftedNumber(value.peg, shift) === null).map((stand) => belowOne(stand, shift)),
    ...taken(ofWater, inRun, renumbered),
    ...inRun.flatMap((stand) => daysInTheWay(stand, from)),
    ...recordsSince(content, inRun, from),
  ];
  if (faults.length > 0) return refused(faults);
  const originals = new Map(inRun.map(({ source: { file } }) => [file, staged.text(file)!]));
  const edited = renumbered.flatMap(({ stand, number }) =>
    stageRecord(
      staged,
      originals.get(stand.source.file)!,
      stand,
      recordPath(water, number),
      edits(stand, number, from),
    ),
  );
  if (edited.length > 0) return refused(edited);
  for (const { value } of inRun) staged.takeAway(recordPath(water, value.peg));
  return { faults: [], changes: [...renumbered.flatMap(words(originals)), ...moveGuideDay(content, from, staged)] };
}

/** Where the record of a number is kept. */
export function recordPath(water: string, peg: string): string {
  return `pegs/${water}/${peg}.md`;
}

function refused(faults: readonly Fault[]): StandPlan {
  return { faults, changes: [] };
}

function edits({ value: peg }: Placed<Peg>, number: string, from: Day): readonly FieldEdit[] {
  return [
    ...idEdits(peg),
    { kind: 'append', path: ['was'], item: { peg: peg.peg, until: addDays(from, -1) } },
    { kind: 'set', path: ['peg'], value: number },
  ];
}

const words =
  (originals: ReadonlyMap<string, string>) =>
  ({ stand: { value }, number }: Renumbered): StandChange[] => {
    const path = recordPath(value.water, number);
    const place = originals.has(path) ? '' : ', a number nobody has today';
    return [{ where: pegKey(value.water, value.peg), words: `${value.peg} → ${number}${place} (${path})` }];
  };

/** A number that another stand, which keeps it, has today. */
function taken(
  ofWater: readonly Placed<Peg>[],
  inRun: readonly Placed<Peg>[],
  renumbered: readonly Renumbered[],
): readonly Fault[] {
  const stays = ofWater.filter((stand) => !inRun.includes(stand));
  return renumbered.flatMap(({ stand, number }) => {
    const other = stays.find(({ value }) => value.peg.toLowerCase() === number.toLowerCase());
    if (other === undefined) return [];
    return [
      faultAt(stand.source, ['peg'], {
        rule: 'repeg-taken',
        found: `the new number "${number}" for peg ${stand.value.peg}`,
        expected: `a number that nobody keeps; ${other.source.file}:${other.source.placeOf(['peg']).line} has it`,
        mend: 'Widen the run so that it moves as well, or retire that stand first.',
      }),
    ];
  });
}

function belowOne(stand: Placed<Peg>, shift: number): Fault {
  return faultAt(stand.source, ['peg'], {
    rule: 'repeg-number',
    found: `a number below 1 for peg ${stand.value.peg}, moved by ${shift}`,
    expected: 'numbers from 1 on',
    mend: 'Choose a smaller shift, or a run that begins higher.',
  });
}

function noSuchWater({ known }: Content, water: string): Fault {
  return faultOfFile('', {
    rule: 'folder-water',
    found: `"${water}"`,
    expected: `one of its waters: ${[...known.waters].join(', ')}`,
    mend: didYouMean(water, known.waters, 'Name the water as its file in waters/ is named.'),
  });
}

function noSuchPegs(ofWater: readonly Placed<Peg>[], water: string): Fault {
  const numbers = ofWater.map(({ value }) => value.peg);
  return faultOfFile('', {
    rule: 'folder-range',
    found: 'no peg of that run',
    expected:
      numbers.length === 0 ? `a water with pegs; ${water} has none` : `numbers from ${numbers[0]} to ${numbers.at(-1)}`,
    mend: 'Name a run of today’s numbers: 10-18, 12, or 10- for 10 and all above it.',
  });
}
