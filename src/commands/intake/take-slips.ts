import { basename } from 'node:path';
import { planSlip, type SlipLog } from '../../content/intake/slip-rows.ts';
import { StagedFiles } from '../../content/intake/staged-files.ts';
import { visibleLine } from '../../domain/hidden-characters.ts';
import { isSlipFile, readSlipFile, type Slip } from '../../match-day/slip-file.ts';
import type { CommandIo } from '../command-io.ts';
import { answerFileOf, readAnswers } from '../import/answer-file.ts';
import { refuse } from '../import/ask-to-write.ts';
import { finishImport } from '../import/finish-import.ts';
import { FolderImport } from '../import/folder-import.ts';
import { typed } from '../package-folder.ts';
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
  const log = slipLog(opened.folder);
  const staged = new StagedFiles(opened.folder.files);
  const plans = slips.map(({ name, slip }) => ({ name, plan: planSlip(slip, log, staged) }));
  const refused = plans.flatMap(({ name, plan }) => (plan.ok ? [] : [visibleLine(`${name}: ${plan.why}`)]));
  if (refused.length > 0) return refuse(refused, io);
  for (const { plan } of plans) if (plan.ok) for (const line of plan.told) io.print(visibleLine(line));
  const answerPath = answerFileOf(folder, null);
  return finishImport(
    opened.folder,
    {
      changed: staged.changed(),
      answers: readAnswers(answerPath),
      answerPath,
      isAgreed,
      nothingNew: slips.length === 1 ? 'There is nothing new in this slip' : 'There is nothing new in these slips',
      done: `Taken in. Build the guide anew: ${typed('build')}`,
    },
    io,
  );
}

function slipLog({ content }: FolderImport): SlipLog {
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
