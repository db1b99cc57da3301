import { basename } from 'node:path';
import type { DepthCheck } from '../../content/intake/slip-depths.ts';
import { planSlip, type SlipLog } from '../../content/intake/slip-rows.ts';
import { StagedFiles } from '../../content/intake/staged-files.ts';
import { readVenue } from '../../content/read-venue.ts';
import { visibleLine } from '../../domain/hidden-characters.ts';
import { type PlumbExpecter, plumbExpecter } from '../../ground/expected-plumb.ts';
import type { Slip } from '../../match-day/slip.ts';
import { isSlipFile, readSlipFile } from '../../match-day/slip-file.ts';
import { type CommandIo, EXIT } from '../command-io.ts';
import { answerFileOf, readAnswers } from '../import/answer-file.ts';
import { refuse } from '../import/ask-to-write.ts';
import { finishImport } from '../import/finish-import.ts';
import { FolderImport } from '../import/folder-import.ts';
import { settleQuestions } from '../import/settle-questions.ts';
import { typedFor } from '../print-faults.ts';
import { latestDayOnEarth } from './latest-day.ts';
import { textsOfKind } from './texts-of-files.ts';

/** A file larger than this is no slip. */
const MAX_BYTES = 100_000;

/** The texts of the files named, where the first of them is an angler's slip; null where they are something else. */
export function textsOfSlips(paths: readonly string[]): ReadonlyMap<string, string> | null {
  return textsOfKind(paths, MAX_BYTES, isSlipFile);
}

/** Takes anglers' slips into the log: shown first, all or nothing, and the same slip again adds nothing. */
export async function takeSlips(
  folder: string,
  texts: ReadonlyMap<string, string>,
  isAgreed: boolean,
  io: CommandIo,
): Promise<number> {
  const slips: { readonly name: string; readonly slip: Slip }[] = [];
  const faults: string[] = [];
  for (const [path, text] of texts) {
    const read = await readSlipFile(text);
    if (read.ok) slips.push({ name: basename(path), slip: read.slip });
    else faults.push(`${basename(path)}: ${read.why}`);
  }
  if (faults.length > 0) return refuse(faults, io);
  const opened = await FolderImport.open(folder);
  if (!opened.ok) return refuse(opened.lines, io);
  const expected = slips.some(({ slip }) => slip.depths.length > 0) ? plumbsOf(opened.folder) : null;
  if (expected === 'faults') {
    return refuse(
      [`These slips have depths, and the folder has faults: mend them first. ${typedFor('check', folder)}`],
      io,
    );
  }
  const answerPath = answerFileOf(folder, null);
  const settled = await settleQuestions(
    (asker) => {
      const log = slipLog(opened.folder, expected === null ? null : { expected, asker });
      const staged = new StagedFiles(opened.folder.files);
      return { staged, plans: slips.map(({ name, slip }) => ({ name, plan: planSlip(slip, log, staged) })) };
    },
    readAnswers(answerPath),
    answerPath,
    false,
    io,
  );
  if (settled === null) return EXIT.faults;
  const { staged, plans } = settled.reading;
  const refused = plans.flatMap(({ name, plan }) => (plan.ok ? [] : [visibleLine(`${name}: ${plan.why}`)]));
  if (refused.length > 0) return refuse(refused, io);
  for (const { plan } of plans) if (plan.ok) for (const line of plan.told) io.print(visibleLine(line));
  return finishImport(
    opened.folder,
    {
      changed: staged.changed(),
      answers: settled.answers,
      answerPath,
      isAgreed,
      nothingNew: slips.length === 1 ? 'There is nothing new in this slip' : 'There is nothing new in these slips',
      done: `Taken in. Build the guide anew: ${typedFor('build', folder)}`,
    },
    io,
  );
}

/** By what own depths are judged; a folder with faults has no bed to judge them by. */
function plumbsOf({ read }: FolderImport): PlumbExpecter | 'faults' {
  const { venue } = readVenue(read);
  return venue === null ? 'faults' : plumbExpecter(venue);
}

function slipLog({ content }: FolderImport, depths: DepthCheck | null): SlipLog {
  const sessions = Map.groupBy(
    content.sessions.map(({ value }) => value),
    ({ event }) => event,
  );
  const pegs = Map.groupBy(
    content.pegs.map(({ value }) => value),
    ({ water }) => water,
  );
  return {
    venue: content.settings.name,
    latestDay: content.settings.invented ? null : latestDayOnEarth(),
    depths,
    units: content.settings.units,
    bagParts: content.settings.bagParts,
    events: content.events.map(({ value }) => value),
    pegsOf: (water) => (pegs.get(water) ?? []).map(({ peg }) => peg),
    sessionsOf: (event) =>
      (sessions.get(event) ?? []).map(({ peg, painted, weightGrams }) => ({
        peg: painted ?? peg,
        ...(weightGrams === undefined ? {} : { weightGrams }),
      })),
  };
}
