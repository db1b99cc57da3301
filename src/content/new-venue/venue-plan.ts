import type { Day } from '../../domain/day.ts';

/** What a club says of itself before it has written anything: enough for a folder that checks and builds. */
export interface VenuePlan {
  readonly name: string;
  readonly club: string;
  readonly day: Day;
  readonly lengths: 'm' | 'ft';
  readonly weights: 'kg' | 'lb';
  /** What is weighed apart, in the club's words; none where only totals are weighed. */
  readonly parts: readonly string[];
  readonly waters: readonly WaterPlan[];
  readonly lines: LinesPlan;
}

export interface WaterPlan {
  readonly id: string;
  readonly name: string;
  readonly pegs: readonly string[];
}

/** What is known of overhead lines: somebody looked and found none; nobody has looked; there are some, not drawn yet. */
export type LinesPlan =
  | { readonly state: 'looked'; readonly on: Day; readonly by: string; readonly how: string }
  | { readonly state: 'not-looked' }
  | { readonly state: 'known' };
