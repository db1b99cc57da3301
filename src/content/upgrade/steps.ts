import type { Content } from '../content.ts';
import type { StagedFiles } from '../intake/staged-files.ts';
import type { StandPlan } from '../stands/stand-change.ts';
import { toFormat2 } from './to-format-2.ts';

/** Rewrites a folder of one format into the next. A further format is one more of these, in a file of its own. */
export interface UpgradeStep {
  /** The format it leads to; it takes a folder of the format before. */
  readonly to: number;
  /** What the new format means, for the person who is asked. */
  readonly meaning: string;
  /** Stages the rewritten files; `format` itself is written by `plan-upgrade.ts`. */
  readonly rewrite: (content: Content, staged: StagedFiles) => StandPlan;
}

/** Every step, from the oldest on. */
export const UPGRADE_STEPS: readonly UpgradeStep[] = [
  {
    to: 2,
    meaning: 'every peg record states the id of its stand, so that its number may change',
    rewrite: toFormat2,
  },
];
