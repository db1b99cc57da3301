import { StagedFiles } from '../../content/intake/staged-files.ts';
import type { Asker } from '../../content/papers/questions.ts';
import { type CommandIo, EXIT } from '../command-io.ts';
import { typedFor } from '../print-faults.ts';
import { answerFileOf, readAnswers } from './answer-file.ts';
import { refuse } from './ask-to-write.ts';
import { finishImport } from './finish-import.ts';
import { FolderImport } from './folder-import.ts';
import type { ImportOptions } from './import-options.ts';
import { settleQuestions } from './settle-questions.ts';

/** How papers of one kind are taken in. */
export interface PaperKind<P, R> {
  /** Reads one file; a `RangeError` says why it cannot be read at all. */
  readonly read: (file: string) => P;
  /** One reading with the answers there are. */
  readonly settle: (papers: readonly P[], venue: FolderImport, asker: Asker) => R;
  /** Puts what was read into the folder's files, and tells of it. */
  readonly stage: (reading: R, staged: StagedFiles, papers: readonly P[], venue: FolderImport) => void;
  /** What to do before publishing: "Build the guide anew". */
  readonly next: string;
}

/** Takes papers of one kind into a folder; gives the exit code. */
export type TakePapers = (
  folder: string,
  files: readonly string[],
  options: ImportOptions,
  io: CommandIo,
) => Promise<number>;

/** Reads papers, all or none, asks what they leave open, and takes them into the folder, all or nothing. */
export function takingPapers<P, R>(
  kindOf: (options: ImportOptions, io: CommandIo, folder: string) => PaperKind<P, R>,
): TakePapers {
  return (folder, files, options, io) => takePapers(folder, files, kindOf(options, io, folder), options, io);
}

async function takePapers<P, R>(
  folder: string,
  files: readonly string[],
  kind: PaperKind<P, R>,
  options: ImportOptions,
  io: CommandIo,
): Promise<number> {
  const answerPath = answerFileOf(folder, options.answers);
  const opened = await FolderImport.open(folder);
  if (!opened.ok) return refuse(opened.lines, io);
  const venue = opened.folder;
  let papers: readonly P[];
  try {
    papers = files.map(kind.read);
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    return refuse([error.message], io);
  }
  const settled = await settleQuestions(
    (asker) => kind.settle(papers, venue, asker),
    readAnswers(answerPath),
    answerPath,
    options.isJson,
    io,
  );
  if (settled === null) return EXIT.faults;
  const staged = new StagedFiles(venue.files);
  kind.stage(settled.reading, staged, papers, venue);
  return finishImport(
    venue,
    {
      changed: staged.changed(),
      answers: settled.answers,
      answerPath,
      isAgreed: options.isAgreed,
      nothingNew: 'There is nothing new in this',
      done: `Taken in. ${kind.next}: ${typedFor('build', folder)}`,
    },
    io,
  );
}
