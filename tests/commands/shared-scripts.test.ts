import { describe, expect, it } from 'vitest';
import { isBelowEveryPage } from '../../src/commands/shared-scripts.ts';

const PAGE = '/guide/src/layouts/Page.astro?astro&type=script&index=0&lang.ts';
const SEARCH = '/guide/src/pages/search/index.astro?astro&type=script&index=0&lang.ts';

/** Who imports each module. `acts` is named by the script of every page itself, `day` and `words` lie below it. */
const IMPORTERS: Readonly<Record<string, readonly string[]>> = {
  [PAGE]: [],
  [SEARCH]: [],
  acts: [PAGE],
  day: ['acts', 'found'],
  words: ['day', 'circle'],
  circle: ['words'],
  found: [SEARCH],
};
const isBelow = (id: string) =>
  isBelowEveryPage(id, (module) => (IMPORTERS[module] ? { importers: IMPORTERS[module] } : null));

describe('the file that the script of every page rests on', () => {
  it('holds what that script comes to by way of another, whoever else needs it', () => {
    expect(['day', 'words', 'circle'].filter(isBelow)).toEqual(['day', 'words', 'circle']);
  });

  it('holds neither what acts by itself nor what one page alone needs', () => {
    expect([PAGE, SEARCH, 'acts', 'found', 'unknown'].filter(isBelow)).toEqual([]);
  });
});
