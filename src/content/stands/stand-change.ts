import { addDays, type Day } from '../../domain/day.ts';
import type { Peg } from '../../domain/peg.ts';
import { standId } from '../../domain/stand.ts';
import type { Content } from '../content.ts';
import { editFrontMatter, type FieldEdit } from '../edit-front-matter.ts';
import type { Fault } from '../fault.ts';
import type { StagedFiles } from '../intake/staged-files.ts';
import { faultAt, faultOfFile, type Placed } from '../sources/source.ts';
import { CannotEdit } from '../yaml-edit/yaml-place.ts';

/** One thing a change of stands would do, for the person who is asked whether it is to be done. */
export interface StandChange {
  /** `kiln-pool/10`, or `venue.md`. */
  readonly where: string;
  readonly words: string;
}

/** A change of stands worked out: what is in the way of it, or what it would do; the files are staged. */
export interface StandPlan {
  readonly faults: readonly Fault[];
  readonly changes: readonly StandChange[];
}

/** Edits that give a record its id, where it has none: the one that was always made of its water and number. */
export function idEdits(peg: Peg): readonly FieldEdit[] {
  return peg.id === undefined ? [{ kind: 'set', path: ['id'], value: standId(peg) }] : [];
}

/** Puts an edited record under its new name. A record that cannot be edited by machine is a fault. */
export function stageRecord(
  staged: StagedFiles,
  original: string,
  { value: peg, source }: Placed<Peg>,
  path: string,
  edits: readonly FieldEdit[],
): readonly Fault[] {
  try {
    staged.put(path, editFrontMatter(original, edits));
    return [];
  } catch (error) {
    if (!(error instanceof CannotEdit)) throw error;
    return [
      faultOfFile(
        source.file,
        {
          rule: 'record-by-hand',
          found: `a record that cannot be changed by machine: ${error.message}`,
          expected: 'front matter in plain lines',
          mend: `Write the change of peg ${peg.peg} by hand, as src/content/format.md tells.`,
        },
        source.placeOf([]),
      ),
    ];
  }
}

/** Moves `guide-day` on to the day of the change: before it the guide would show what is not yet so. */
export function moveGuideDay(
  { settings, settingsSource }: Content,
  from: Day,
  staged: StagedFiles,
): readonly StandChange[] {
  if (settings.guideDay >= from || settingsSource === null) return [];
  const text = staged.text(settingsSource.file)!;
  staged.put(settingsSource.file, editFrontMatter(text, [{ kind: 'set', path: ['guide-day'], value: from }]));
  return [{ where: settingsSource.file, words: `guide-day: ${settings.guideDay} → ${from}` }];
}

/** A stand whose own days forbid a change on that day: its number began no earlier, or it was not there yet. */
export function daysInTheWay({ value: peg, source }: Placed<Peg>, from: Day): readonly Fault[] {
  const last = peg.was?.at(-1)?.until;
  // The number it has now was on its post for a day at least.
  if (last !== undefined && addDays(from, -1) <= last) {
    return [
      faultAt(source, ['was', (peg.was?.length ?? 1) - 1, 'until'], {
        rule: 'change-day',
        found: `a change of peg ${peg.peg} from ${from}`,
        expected: `a day after ${addDays(last, 1)}, the first day of the number it has now`,
        mend: 'Choose a later --from.',
      }),
    ];
  }
  if (peg.since !== undefined && from <= peg.since) {
    return [
      faultAt(source, ['since'], {
        rule: 'change-day',
        found: `a change of peg ${peg.peg} from ${from}`,
        expected: `a day after ${peg.since}, when it was first fished`,
        mend: 'Choose a later --from.',
      }),
    ];
  }
  return [];
}
