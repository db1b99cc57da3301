/** One rule, heading or sentence of a club's rules as its paper has them. */
export interface RuleLine {
  readonly kind: 'heading' | 'item' | 'text';
  /** Counted from 1 for items that stand in no other; 0 for headings and sentences. */
  readonly level: number;
  /** The club's own number of an item, without brackets or stops: `7`, `7.2`, `a`; empty for a dash or bullet. */
  readonly label: string;
  /** The words, in one line. */
  readonly text: string;
  /** Where it begins in the paper, counted from 1. */
  readonly line: number;
}
