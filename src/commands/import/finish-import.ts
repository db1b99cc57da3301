import type { NewFile } from '../../content/folder-change/commit-change.ts';
import { formatFaults } from '../../content/format-fault.ts';
import type { KeptAnswers } from '../../content/papers/questions.ts';
import { type CommandIo, EXIT } from '../command-io.ts';
import { writeAnswers } from './answer-file.ts';
import { askToWrite, refuse } from './ask-to-write.ts';
import type { FolderImport } from './folder-import.ts';

/** What an import is about to write, once it has been shown. */
export interface ImportEnding {
  readonly changed: readonly NewFile[];
  readonly answers: KeptAnswers;
  readonly answerPath: string;
  readonly isAgreed: boolean;
  /** Said where nothing is new: "There is nothing new in this". */
  readonly nothingNew: string;
  /** Said once it is written. */
  readonly done: string;
  /** Written before the folder is; what it keeps must not come after the change that rests on it. */
  readonly before?: () => void;
}

/** Ends every import alike: holds the folder as it would be against its checks, asks, writes all or nothing, keeps the answers. */
export async function finishImport(folder: FolderImport, ending: ImportEnding, io: CommandIo): Promise<number> {
  const broken = folder.faultsAfter(ending.changed);
  if (broken.length > 0) return refuse(['The folder would not be valid any more:', ...formatFaults(broken)], io);
  if (ending.changed.length === 0) {
    io.printError(`${ending.nothingNew}: nothing was changed.`);
    return EXIT.clean;
  }
  const agreed = await askToWrite(ending.isAgreed, io);
  if (agreed !== true) return agreed;
  ending.before?.();
  const failure = folder.write(ending.changed);
  if (failure !== null) return refuse([failure], io);
  writeAnswers(ending.answerPath, ending.answers);
  io.printError(ending.done);
  return EXIT.clean;
}
