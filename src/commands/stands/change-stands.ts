import { formatFaults } from '../../content/format-fault.ts';
import { StagedFiles } from '../../content/intake/staged-files.ts';
import type { StandPlan } from '../../content/stands/stand-change.ts';
import { type CommandIo, EXIT } from '../command-io.ts';
import { askToWrite, NOTHING_CHANGED, refuse } from '../import/ask-to-write.ts';
import { FolderImport } from '../import/folder-import.ts';

/** How a change of stands is to end. */
export interface StandEnding {
  readonly isAgreed: boolean;
  /** Show it and write nothing. */
  readonly isDryRun: boolean;
  /** Said where there is nothing to do. */
  readonly nothingNew: string;
  readonly done: string;
  /** Said before it is written. */
  readonly hint?: string;
}

/** Shows a change of stands, holds the folder as it would be against its checks, asks, and writes all or nothing. */
export async function changeStands(
  venue: string,
  plan: (folder: FolderImport, staged: StagedFiles) => StandPlan,
  { isAgreed, isDryRun, nothingNew, done, hint }: StandEnding,
  io: CommandIo,
): Promise<number> {
  const opened = await FolderImport.open(venue);
  if (!opened.ok) return refuse(opened.lines, io);
  const { folder } = opened;
  const staged = new StagedFiles(folder.files);
  const { faults, changes } = plan(folder, staged);
  if (faults.length > 0) return refuse(formatFaults(faults), io);
  const changed = staged.changed();
  if (changed.length === 0) {
    io.print(`${nothingNew}: nothing was changed.`);
    return EXIT.clean;
  }
  for (const { where, words } of changes) io.print(`${where}: ${words}`);
  const broken = folder.faultsAfter(changed);
  if (broken.length > 0) return refuse(['The folder would not be valid any more:', ...formatFaults(broken)], io);
  if (isDryRun) {
    io.print(NOTHING_CHANGED);
    return EXIT.clean;
  }
  if (hint !== undefined) io.print(hint);
  const agreed = await askToWrite(isAgreed, io);
  if (agreed !== true) return agreed;
  const failure = folder.write(changed);
  if (failure !== null) return refuse([failure], io);
  io.print(done);
  return EXIT.clean;
}
