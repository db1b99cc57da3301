import type { NoDepth, UnusedSoundings } from '../ground/survey.ts';
import { inEnglish, type Say } from '../words/say.ts';

/** Why a line has no depth, in the language of the page. */
export function noDepthWords(why: NoDepth = 'unplumbed', say: Say = inEnglish): string {
  return say('depth.noDepth', { why });
}

const UNUSED: Readonly<Record<UnusedSoundings['why'], string>> = {
  outside: 'outside the outline',
  'on-island': 'on an island',
  'peg-unknown': 'plumbed from a peg that is not known',
  'plumbed-again': 'plumbed again later at the same place',
};

/** Why soundings were not used. */
export function unusedWords({ why }: UnusedSoundings): string {
  return UNUSED[why];
}
