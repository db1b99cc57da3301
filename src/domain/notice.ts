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
  /** Id of the notice it takes the place of. */
  readonly replaces?: string;
  /** Empty means the whole venue. */
  readonly waters: readonly string[];
  readonly pegs: readonly PegKey[];
  readonly markdown: string;
}
