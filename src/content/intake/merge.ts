import type { Day } from '../../domain/day.ts';
import type { FieldEdit } from '../edit-front-matter.ts';
import type { Change, Choose, Conflict } from './intake-choice.ts';

/** What of the round every merge needs. */
export interface MergeContext {
  readonly ref: string;
  readonly day: Day;
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

/** Collects a merge of one peg bit by bit. */
export class MergeNotes implements Merge {
  readonly edits: FieldEdit[] = [];
  readonly changes: Change[] = [];
  readonly conflicts: Conflict[] = [];
  readonly context: MergeContext;
  readonly peg: string;

  constructor(context: MergeContext, peg: string) {
    this.context = context;
    this.peg = peg;
  }

  /** Notes that a field is set. `path` is the field with dots between its keys. */
  set(path: string, value: string): void {
    const steps = path.split('.').map((step) => (/^\d+$/.test(step) ? Number(step) : step));
    this.edits.push({ kind: 'set', path: steps, value });
  }

  /** Notes a change for the summary. */
  tell(field: string, from: string | null, to: string): void {
    this.changes.push({ where: this.peg, field, from, to });
  }

  /**
   * Whether the round's word on a field is to be written: where the folder still says what the round's guide said, where
   * both say the same, or where that was chosen. An open conflict is noted.
   */
  takesRound(field: string, guide: string | null, folder: string | null, round: string): boolean {
    if (folder === round || folder === guide) return true;
    const conflict = { id: `${this.context.ref} ${this.peg} ${field}`, peg: this.peg, field, guide, folder, round };
    const choice = this.context.choose(conflict);
    if (choice === undefined) this.conflicts.push(conflict);
    return choice === 'take-round';
  }
}
