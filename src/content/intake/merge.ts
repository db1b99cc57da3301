import type { Day } from '../../domain/day.ts';
import type { FieldEdit, FieldPath } from '../edit-front-matter.ts';
import type { Change, Choose, Conflict } from './intake-choice.ts';

/** What of the round every merge needs. */
export interface MergeContext {
  readonly ref: string;
  /** The day the round was begun: of whatever has no day of its own. */
  readonly day: Day;
  /** Day of the guide the round was made from; null where the round says of each fact which day its guide knew. */
  readonly undatedGuide: Day | null;
  /** The role that walked the round. */
  readonly by?: string | undefined;
  readonly lengthUnit: 'm' | 'ft';
  /** File names of the round's photos by their id. */
  readonly photos: ReadonlyMap<string, string>;
  readonly choose: Choose;
}

/** How a record is to change; nothing of an open conflict is in the edits. */
export interface Merge {
  readonly edits: readonly FieldEdit[];
  readonly changes: readonly Change[];
  readonly conflicts: readonly Conflict[];
}

/** One fact as the round's guide had it, as the folder has it, and as the round saw it. Null where nothing was said. */
export interface Fact {
  readonly field: string;
  readonly guide: string | null;
  readonly folder: string | null;
  readonly round: string;
  /** The day the round saw it. */
  readonly seenOn: Day;
  /** The day the folder's was seen, and the day that the guide's was; undefined where the record has none. */
  readonly folderDay?: Day | undefined;
  readonly knownDay?: Day | undefined;
}

/** Collects a merge of one record bit by bit. */
export class MergeNotes implements Merge {
  readonly edits: FieldEdit[] = [];
  readonly changes: Change[] = [];
  readonly conflicts: Conflict[] = [];
  readonly context: MergeContext;
  readonly where: string;

  /** @param where what the record is of, for the summary: `kiln-pool/23` */
  constructor(context: MergeContext, where: string) {
    this.context = context;
    this.where = where;
  }

  /** Notes that a field is set. `path` is the field with dots between its keys. */
  set(path: string, value: string | number): void {
    const steps: FieldPath = path.split('.').map((step) => (/^\d+$/.test(step) ? Number(step) : step));
    this.edits.push({ kind: 'set', path: steps, value });
  }

  /** Notes a change for the summary. */
  tell(field: string, from: string | null, to: string): void {
    this.changes.push({ where: this.where, field, from, to });
  }

  /**
   * Whether the round's word on a fact is to be written. The newest day stands: what the folder saw later is kept, and
   * said so. What somebody changed since the round's guide without a later day, or on the same day, is a conflict.
   */
  takesFact(fact: Fact): boolean {
    const { field, guide, folder, round, seenOn, folderDay } = fact;
    if (folder === round) return true;
    if (folderDay !== undefined && folderDay > seenOn) {
      this.tell(
        `${field}, not taken`,
        `${round}, seen ${seenOn}`,
        `${folder ?? 'nothing'} of ${folderDay} stands: it is newer`,
      );
      return false;
    }
    if (folder === guide || isOlderChange(fact, this.context.undatedGuide)) return true;
    return this.takesRound(field, guide, folder, round);
  }

  /** Whether the round's word stands against the folder's, by choice. An open conflict is noted. */
  takesRound(field: string, guide: string | null, folder: string | null, round: string): boolean {
    const conflict = { id: `${this.context.ref} ${this.where} ${field}`, peg: this.where, field, guide, folder, round };
    const choice = this.context.choose(conflict);
    if (choice === undefined) this.conflicts.push(conflict);
    return choice === 'take-round';
  }
}

/** Whether the folder's change since the guide has a day of its own, before the round saw it. */
function isOlderChange({ folderDay, knownDay, seenOn }: Fact, undatedGuide: Day | null): boolean {
  if (folderDay === undefined || folderDay >= seenOn) return false;
  return undatedGuide === null ? folderDay !== knownDay : folderDay > undatedGuide;
}
