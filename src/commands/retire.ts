import { planRetire } from '../content/stands/plan-retire.ts';
import type { CommandIo } from './command-io.ts';
import { typedFor } from './print-faults.ts';
import { readArguments, UsageError } from './read-arguments.ts';
import { changeDay } from './stands/change-day.ts';
import { changeStands } from './stands/change-stands.ts';
import { venueFolder } from './venue-folder.ts';

/**
 * `retire WATER/PEG --from DAY [--why TEXT] [--dry-run] [--yes] [--venue FOLDER]`: takes a peg out of the guide for good. Its
 * record and its log are kept; what changes is shown before anything is written, all or nothing.
 */
export async function run(args: readonly string[], io: CommandIo): Promise<number> {
  const { values, positionals } = readArguments(
    args,
    {
      venue: { type: 'string' },
      from: { type: 'string' },
      why: { type: 'string' },
      'dry-run': { type: 'boolean' },
      yes: { type: 'boolean' },
    },
    true,
  );
  const [key, ...rest] = positionals;
  const [, water, peg] = /^([^/\s]+)\/([^/\s]+)$/.exec(key ?? '') ?? [];
  if (water === undefined || peg === undefined || rest.length > 0) {
    throw new UsageError("Name one peg with its water: retire kiln-pool/23 --from 2026-03-01 --why 'Filled in'");
  }
  const from = changeDay(values.from);
  const why = values.why?.trim();
  const request = { water, peg, from, ...(why === undefined || why === '' ? {} : { why }) };
  const venue = venueFolder(values.venue, io.environment);
  return changeStands(
    venue,
    (folder, staged) => planRetire(folder.content, request, staged),
    {
      isAgreed: values.yes === true,
      isDryRun: values['dry-run'] === true,
      nothingNew: 'It is retired already',
      done: `Written. Build the guide anew: ${typedFor('build', venue)}`,
    },
    io,
  );
}
