import { editFrontMatter } from '../edit-front-matter.ts';
import { FIRST_FORMAT } from '../folder-format.ts';
import { withChanges } from '../intake/faults-after.ts';
import type { StagedFiles } from '../intake/staged-files.ts';
import { readContent } from '../read-content.ts';
import type { StandPlan } from '../stands/stand-change.ts';
import type { VenueFiles } from '../venue-files.ts';
import type { KeyOrder } from '../yaml-edit/edit-yaml.ts';
import { UPGRADE_STEPS } from './steps.ts';

const SETTINGS = 'venue.md';

/** `format` stands first in `venue.md`. */
const FORMAT_FIRST: KeyOrder = () => ['format'];

/**
 * Works out how a folder is rewritten to the newest format, step by step, each on what the one before left. Of a folder that
 * is there already nothing is staged.
 */
export function planUpgrade(files: VenueFiles, staged: StagedFiles): StandPlan {
  const written = readContent(files).value.settingsSource?.writtenAt(['format']);
  const now = written === undefined ? FIRST_FORMAT : Number(written);
  const changes: StandPlan['changes'][number][] = [];
  for (const { to, meaning, rewrite } of UPGRADE_STEPS.filter((step) => step.to > now)) {
    const step = rewrite(readContent(withChanges(files, staged.changed())).value, staged);
    if (step.faults.length > 0) return { faults: step.faults, changes: [] };
    const settings = staged.text(SETTINGS)!;
    staged.put(SETTINGS, editFrontMatter(settings, [{ kind: 'set', path: ['format'], value: to }], FORMAT_FIRST));
    changes.push({ where: SETTINGS, words: `format: ${to}, in which ${meaning}` }, ...step.changes);
  }
  return { faults: [], changes };
}
