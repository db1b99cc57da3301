import type { Fault } from '../content/fault.ts';
import { tidyFolder } from '../content/folder-change/commit-change.ts';
import { REAL_DISK } from '../content/folder-change/disk.ts';
import { committedChanges } from '../content/folder-change/journal.ts';
import { whyNotWritten } from '../content/folder-change/write-change.ts';
import { formatFaults } from '../content/format-fault.ts';
import type { KeepOpen } from '../content/intake/close-pegs.ts';
import type { Choice, Conflict } from '../content/intake/intake-choice.ts';
import type { IntakePlan } from '../content/intake/plan-intake.ts';
import { type CommandIo, EXIT } from './command-io.ts';
import { NOTHING_CHANGED, refuse } from './import/ask-to-write.ts';
import { chooseConflicts } from './intake/choose-conflicts.ts';
import { Intake } from './intake/intake-folder.ts';
import { readRounds } from './intake/read-rounds.ts';
import { summaryLines } from './intake/summary-lines.ts';
import { takeMatch, textsOfMatchDay } from './intake/take-match.ts';
import { takeSlips, textsOfSlips } from './intake/take-slips.ts';
import { typedFor } from './print-faults.ts';
import { readArguments, UsageError } from './read-arguments.ts';
import { venueFolder } from './venue-folder.ts';

/**
 * `intake FILE… [--yes] [--keep-folder | --take-round] [--without WATER/PEG]… [--close-inside]
 * [--keep-open "WATER/PEG=ROLE: WHY"]… [--venue FOLDER]`: takes bank
 * rounds into the venue folder, all or nothing. Shows what would change and asks before it writes; `--yes` is for scripts.
 * Files of a match day go into the log instead (`take-match.ts`); `--keys FOLDER` says where the register of anglers is kept.
 * So do anglers' slips (`take-slips.ts`).
 * Without a file it finishes an intake that was stopped in the middle.
 */
export async function run(args: readonly string[], io: CommandIo): Promise<number> {
  const { values, positionals } = readArguments(
    args,
    {
      venue: { type: 'string' },
      yes: { type: 'boolean' },
      'keep-folder': { type: 'boolean' },
      'take-round': { type: 'boolean' },
      without: { type: 'string', multiple: true },
      'close-inside': { type: 'boolean' },
      'keep-open': { type: 'string', multiple: true },
      keys: { type: 'string' },
    },
    true,
  );
  if (values['keep-folder'] === true && values['take-round'] === true) {
    throw new UsageError('--keep-folder and --take-round exclude one another.');
  }
  const folder = venueFolder(values.venue, io.environment);
  const isWaiting = committedChanges(REAL_DISK, folder).length > 0;
  if (positionals.length === 0 && !isWaiting) throw new UsageError('Name the file of a bank round: intake FILE');
  if (!isSettled(folder, io)) return EXIT.faults;
  if (positionals.length === 0) return EXIT.clean;

  const matchDay = textsOfMatchDay(positionals);
  if (matchDay !== null) {
    return takeMatch(folder, matchDay, { isAgreed: values.yes === true, keys: values.keys ?? null }, io);
  }
  const slips = textsOfSlips(positionals);
  if (slips !== null) return takeSlips(folder, slips, values.yes === true, io);
  const { rounds, faults } = await readRounds(positionals);
  if (faults.length > 0) return refuse(formatFaults(faults), io);
  const intake = await Intake.open(folder, rounds, new Set(values.without), keptOpen(values['keep-open'] ?? []));

  const everything =
    values['keep-folder'] === true ? 'keep-folder' : values['take-round'] === true ? 'take-round' : null;
  const plan = await planWithChoices(intake, everything, io);
  if (plan === null) return EXIT.faults;
  for (const round of plan.alreadyIn) io.print(`Round ${round.ref} of ${round.day} is in the folder already.`);
  if (plan.files.length === 0) {
    io.print('There is nothing new: nothing was changed.');
    return EXIT.clean;
  }

  const broken = intake.faultsAfter(plan);
  const inside = openInside(broken);
  if (inside.length > 0 && (values['close-inside'] === true || (await asksToClose(inside, io)))) {
    intake.close(inside);
    const closing = intake.plan();
    return finish(intake, closing, intake.faultsAfter(closing), values.yes === true, io);
  }
  return finish(intake, plan, broken, values.yes === true, io);
}

/** Reads `kiln-pool/9=Secretary: one rod fishes from the bank`. */
function keptOpen(values: readonly string[]): ReadonlyMap<string, KeepOpen> {
  return new Map(
    values.map((value) => {
      const [, peg, by, why] = /^([^=\s]+\/[^=\s]+)=([^:]+):\s*(\S.*)$/s.exec(value) ?? [];
      if (peg === undefined || by === undefined || why === undefined) {
        throw new UsageError(
          `--keep-open takes the peg, who decided (a role, never a name) and why: --keep-open "kiln-pool/9=Secretary: the bank beside it is fished". Found ${value}`,
        );
      }
      return [peg, { by: by.trim(), why: why.trim() }];
    }),
  );
}

/** Finishes an intake that was stopped in the middle; false where that needs a person first. */
function isSettled(folder: string, io: CommandIo): boolean {
  try {
    if (tidyFolder(folder)) io.print('An earlier intake was stopped in the middle: it is finished now.');
    return true;
  } catch (error) {
    io.printError(whyNotWritten(error));
    return false;
  }
}

async function planWithChoices(intake: Intake, everything: Choice | null, io: CommandIo): Promise<IntakePlan | null> {
  const first = intake.plan(() => everything ?? undefined);
  if (first.faults.length > 0) {
    refuse(formatFaults(first.faults), io);
    return null;
  }
  if (first.conflicts.length === 0) return first;
  const choices = await chooseConflicts(first.conflicts, io);
  return choices === null ? null : intake.plan((conflict: Conflict) => choices.get(conflict.id));
}

async function asksToClose(pegs: readonly string[], io: CommandIo): Promise<boolean> {
  const which = pegs.join(', ');
  io.printError(
    `Inside the stand-off of an overhead line with what was measured, and open: ${which}. No guide can show that as open.`,
  );
  if (io.ask === undefined) {
    io.printError('Add --close-inside to close it with this intake, or limit it in its record first.');
    return false;
  }
  return (await io.ask('Close it with this intake? [y/n] ')).trim().toLowerCase().startsWith('y');
}

/** Open pegs that what was measured puts inside the stand-off of an overhead line. */
function openInside(faults: readonly Fault[]): readonly string[] {
  const records = faults.filter(({ rule }) => rule === 'stand-off' || rule === 'stand-off-recorded');
  return [...new Set(records.map(({ file }) => file.replace(/^pegs\//, '').replace(/\.md$/, '')))];
}

async function finish(
  intake: Intake,
  plan: IntakePlan,
  broken: readonly Fault[],
  isAgreed: boolean,
  io: CommandIo,
): Promise<number> {
  if (broken.length > 0) {
    return refuse(['The folder would not be valid any more:', ...formatFaults(broken)], io);
  }
  for (const line of summaryLines(plan)) io.print(line);
  if (!isAgreed) {
    if (io.ask === undefined) {
      io.printError(`${NOTHING_CHANGED} Add --yes to take this in without being asked.`);
      return EXIT.faults;
    }
    if (!(await io.ask('Take this in? [y/n] ')).trim().toLowerCase().startsWith('y')) {
      io.print(NOTHING_CHANGED);
      return EXIT.clean;
    }
  }
  const failure = intake.write(plan);
  if (failure !== null) return refuse([failure], io, '');
  io.print(
    `Taken in: ${plan.taken.map(({ ref }) => `round ${ref}`).join(', ')}. Build the guide anew: ${typedFor('build', intake.folder)}`,
  );
  return EXIT.clean;
}
