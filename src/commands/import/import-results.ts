import { basename } from 'node:path';
import { type Assigned, anglerLogs, assignReferences } from '../../content/anglers/assign-references.ts';
import type { Content } from '../../content/content.ts';
import { StagedFiles } from '../../content/intake/staged-files.ts';
import type { Paper, PaperFault } from '../../content/papers/paper.ts';
import type { Asker, KeptAnswers } from '../../content/papers/questions.ts';
import { readPaper } from '../../content/papers/read-paper.ts';
import { type EventChange, planResults } from '../../content/papers/results/plan-results.ts';
import { readResults, type VenueNames } from '../../content/papers/results/read-results.ts';
import type { ResultMatch, Unread } from '../../content/papers/results/result-row.ts';
import { countWords } from '../../domain/count-words.ts';
import { type CommandIo, EXIT } from '../command-io.ts';
import { jsonText } from '../json-text.ts';
import { typedFor } from '../print-faults.ts';
import { type AnglerFiles, drawOfRun, openAnglerFiles, writeRegister } from './angler-files.ts';
import { answerFileOf, readAnswers } from './answer-file.ts';
import { refuse } from './ask-to-write.ts';
import { fileBytes } from './file-bytes.ts';
import { finishImport } from './finish-import.ts';
import { FolderImport } from './folder-import.ts';
import type { ImportOptions } from './import-options.ts';
import { namesInFolder } from './names-in-folder.ts';
import { changeLines, unreadLines } from './results-summary.ts';
import { settleQuestions } from './settle-questions.ts';

/** One reading of the papers with the answers there are. */
interface Reading {
  readonly matches: readonly ResultMatch[];
  readonly unread: readonly Unread[];
  readonly assigned: Assigned;
}

/** `import results FILE…`: result sheets into the session log. */
export async function importResults(
  folder: string,
  files: readonly string[],
  options: ImportOptions,
  io: CommandIo,
): Promise<number> {
  const answerPath = answerFileOf(folder, options.answers);
  const venue = await FolderImport.open(folder);
  if (!venue.ok) return refuse(venue.lines, io);
  const { papers, faults } = readPapers(files);
  if (faults.length > 0) return refuse(faults.map(faultLine), io);
  for (const remark of papers.flatMap(({ remarks }) => remarks)) io.printError(remark);

  const anglers = openAnglerFiles(folder, venue.folder.content.settings.club, options.keys, io.environment);
  const draw = drawOfRun();
  const settled = await settleQuestions(
    (asker) => read(papers, venue.folder.content, anglers, draw, asker),
    readAnswers(answerPath),
    answerPath,
    options.isJson,
    io,
  );
  if (settled === null) return EXIT.faults;
  const { reading, answers } = settled;
  const stop = whyStopped(reading, answers, answerPath);
  if (stop !== null) return refuse([...unreadLines(reading.unread), stop], io);

  const staged = new StagedFiles(venue.folder.files);
  const changes = planResults(
    reading.matches,
    venue.folder.content.events.map(({ value }) => value),
    (name) => reading.assigned.references.get(name),
    staged,
  );
  tell(changes, reading, anglers, options, io);
  const paperNames = papers.map(({ file }) => file);
  for (const line of namesInFolder(venue.folder.texts, reading.matches, paperNames)) io.printError(line);
  return finishImport(
    venue.folder,
    {
      changed: staged.changed(),
      answers: answers,
      answerPath,
      isAgreed: options.isAgreed,
      nothingNew: 'There is nothing new in these papers',
      done: `Taken in. Build the guide anew: ${typedFor('build', folder)}`,
      // A reference in the log that nobody can resolve would be worse than one too many in the register.
      before: () => writeRegister(anglers, reading.assigned.rows),
    },
    io,
  );
}

function readPapers(files: readonly string[]): { papers: readonly Paper[]; faults: readonly PaperFault[] } {
  const papers: Paper[] = [];
  const faults: PaperFault[] = [];
  for (const file of files) {
    const read = readPaper(file === '-' ? 'pasted' : basename(file), fileBytes(file));
    if (read.ok) papers.push(read.paper);
    else faults.push(read.fault);
  }
  return { papers, faults };
}

/** Why a reading goes no further though no question is open; null where it does. */
function whyStopped(reading: Reading, answers: KeptAnswers, answerPath: string): string | null {
  if (reading.matches.length === 0) return 'No results were found.';
  return isStopped(answers) ? `Put the sheet right first, and take the answer "stop" out of ${answerPath}.` : null;
}

function isStopped({ papers, all }: KeptAnswers): boolean {
  return [all, ...Object.values(papers)].some((own) => Object.values(own).includes('stop'));
}

function read(
  papers: readonly Paper[],
  content: Content,
  anglers: AnglerFiles,
  draw: (salt: string) => Uint8Array,
  asker: Asker,
): Reading {
  const names = venueNames(content);
  const results = papers.map((paper) => readResults(paper, names, asker));
  const matches = results.flatMap((result) => result.matches);
  const assigned = assignReferences(
    matches.flatMap(({ rows, day, file }) => rows.map(({ name }) => ({ text: name, match: `${file} ${day}` }))),
    anglers.key,
    anglers.rows,
    anglerLogs(content),
    draw,
    asker,
  );
  return { matches, unread: results.flatMap((result) => result.unread), assigned };
}

function venueNames({ settings, waters, pegs, events }: Content): VenueNames {
  const usualHours = new Map<string, number>();
  const inOrder = events.map(({ value }) => value).sort((a, b) => (a.day < b.day ? -1 : 1));
  for (const { water, hours } of inOrder) usualHours.set(water, hours);
  return {
    waters: waters.map(({ id, record }) => ({
      id,
      name: record?.value.name ?? id,
      pegs: new Set(pegs.filter(({ value }) => value.water === id).map(({ value }) => value.peg)),
    })),
    bagParts: settings.bagParts,
    usualHours,
  };
}

function tell(
  changes: readonly EventChange[],
  reading: Reading,
  anglers: AnglerFiles,
  options: ImportOptions,
  io: CommandIo,
): void {
  const { added, respelt } = reading.assigned;
  if (options.isJson) {
    io.print(jsonText({ changes, unread: reading.unread, anglers: { added, known: reading.assigned.rows.length } }));
    return;
  }
  for (const line of changeLines(changes)) io.print(line);
  for (const [because, count] of respelt)
    io.print(`${countWords(count, 'spelling')} new to the register, settled by ${because}`);
  const key = anglers.isNew ? ` The key is ${anglers.keyPath}: it was made now, keep a copy in the club’s safe.` : '';
  io.print(`${countWords(added, 'new angler')}, known from now on by ${anglers.registerPath}.${key}`);
  for (const line of unreadLines(reading.unread)) io.printError(line);
}

function faultLine({ file, sheet, row, found, expected, mend }: PaperFault): string {
  const place = `${file}${sheet === undefined ? '' : `, ${sheet}`}${row === undefined ? '' : `, row ${row}`}`;
  return `${place}: found ${found}, expected ${expected}. ${mend}`;
}
