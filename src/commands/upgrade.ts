import { planUpgrade } from '../content/upgrade/plan-upgrade.ts';
import type { CommandIo } from './command-io.ts';
import { typedFor } from './print-faults.ts';
import { readArguments } from './read-arguments.ts';
import { changeStands } from './stands/change-stands.ts';
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
  const venue = venueFolder(values.venue, io.environment);
  return changeStands(
    venue,
    (folder, staged) => planUpgrade(folder.read, staged),
    {
      isAgreed: values.yes === true,
      isDryRun: values['dry-run'] === true,
      nothingNew: 'The folder is of the newest format',
      done: `Written. The folder reads as it did before: ${typedFor('check', venue)}`,
    },
    io,
  );
}
