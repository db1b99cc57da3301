import type { Day } from './day.ts';
import type { PegKey } from './peg.ts';

export type NoticeKind = 'hazard' | 'closure' | 'works' | 'news';

/** A dated message about a hazard, closure or works. */
export interface Notice {
  /** File name without its ending: `2026-11-02-boards-off`. */
  readonly id: string;
  readonly title: string;
  readonly kind: NoticeKind;
  readonly from: Day;
  /** Last day it holds; open-ended where left out. */
  readonly until?: Day;
  /** The first day on which it no longer holds because it was taken back. */
  readonly cancelledOn?: Day;
  /** The day its words were last changed; its file's name has the day it was written. */
  readonly changedOn?: Day;
  /** Id of the notice it takes the place of. */
  readonly replaces?: string;
  /** Empty means the whole venue. */
  readonly waters: readonly string[];
  readonly pegs: readonly PegKey[];
  readonly markdown: string;
}
