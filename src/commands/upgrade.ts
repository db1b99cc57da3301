import { StagedFiles } from '../content/intake/staged-files.ts';
import { planUpgrade } from '../content/upgrade/plan-upgrade.ts';
import type { CommandIo } from './command-io.ts';
import { refuse } from './import/ask-to-write.ts';
import { FolderImport } from './import/folder-import.ts';
import { readArguments } from './read-arguments.ts';
import { finishStandChange } from './stands/finish-stand-change.ts';
import { venueFolder } from './venue-folder.ts';

/**
 * `upgrade [--dry-run] [--yes] [--venue FOLDER]`: rewrites an older folder to the newest format, all or nothing. Comments,
 * order and everything it says stay; a folder of a newer format is refused.
 */
export async function run(args: readonly string[], io: CommandIo): Promise<number> {
  const { values } = readArguments(args, {
    venue: { type: 'string' },
    'dry-run': { type: 'boolean' },
    yes: { type: 'boolean' },
  });
  const opened = await FolderImport.open(venueFolder(values.venue, io.environment));
  if (!opened.ok) return refuse(opened.lines, io);
  const { folder } = opened;
  const staged = new StagedFiles(folder.files);
  const plan = planUpgrade(folder.read, staged);
  return finishStandChange(
    folder,
    plan,
    staged,
    {
      isAgreed: values.yes === true,
      isDryRun: values['dry-run'] === true,
      nothingNew: 'The folder is of the newest format',
      done: 'Written. The folder reads as it did before: npm run -s venue -- check',
    },
    io,
  );
}
