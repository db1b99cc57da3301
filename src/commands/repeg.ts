import { readRange, readShift } from '../content/stands/peg-range.ts';
import { planRepeg } from '../content/stands/plan-repeg.ts';
import type { CommandIo } from './command-io.ts';
import { typedFor } from './print-faults.ts';
import { readArguments, UsageError } from './read-arguments.ts';
import { changeDay } from './stands/change-day.ts';
import { changeStands } from './stands/change-stands.ts';
import { venueFolder } from './venue-folder.ts';

/**
 * `repeg WATER RANGE SHIFT --from DAY [--dry-run] [--yes] [--venue FOLDER]`: numbers a run of pegs anew. The stands keep their
 * records, ids and logs; what changes is shown before anything is written, all or nothing.
 */
export async function run(args: readonly string[], io: CommandIo): Promise<number> {
  const { values, positionals } = readArguments(
    args.map((argument) => (/^[-−]\d+$/.test(argument) ? `--shift=${argument}` : argument)),
    {
      venue: { type: 'string' },
      from: { type: 'string' },
      shift: { type: 'string' },
      'dry-run': { type: 'boolean' },
      yes: { type: 'boolean' },
    },
    true,
  );
  const [water, run, shiftWritten = values.shift, ...rest] = positionals;
  if (water === undefined || run === undefined || shiftWritten === undefined || rest.length > 0) {
    throw new UsageError(
      'Name the water, the run of numbers and the shift: repeg kiln-pool 10-18 +1 --from 2026-03-01',
    );
  }
  const range = readRange(run);
  if (range === null) throw new UsageError(`Unexpected run "${run}", expected 10-18, 12, or 10- for all from 10 on.`);
  const shift = readShift(shiftWritten);
  if (shift === null) throw new UsageError(`Unexpected shift "${shiftWritten}", expected +1, +2, -1 and so on.`);
  const from = changeDay(values.from);
  const venue = venueFolder(values.venue, io.environment);
  return changeStands(
    venue,
    (folder, staged) => planRepeg(folder.content, { water, range, shift, from }, staged),
    {
      isAgreed: values.yes === true,
      isDryRun: values['dry-run'] === true,
      nothingNew: 'These numbers are so already',
      hint: `Take in every bank round that was walked before ${from} first: afterwards its numbers are those of other posts.`,
      done: `Written. A new peg between them gets a record of its own with since: ${from}. Build the guide anew: ${typedFor('build', venue)}`,
    },
    io,
  );
}
