import { basename } from 'node:path';
import { anglerName } from '../../content/anglers/angler-name.ts';
import { StagedFiles } from '../../content/intake/staged-files.ts';
import { headingWords } from '../../content/papers/headings.ts';
import { readRules } from '../../content/papers/rules/read-rules.ts';
import { type RulesVenue, type SettledRules, settleRules } from '../../content/papers/rules/settle-rules.ts';
import { countWords } from '../../domain/count-words.ts';
import { type CommandIo, EXIT } from '../command-io.ts';
import { typed } from '../package-folder.ts';
import { knownAnglers } from './angler-files.ts';
import { answerFileOf, readAnswers } from './answer-file.ts';
import { refuse } from './ask-to-write.ts';
import { fileBytes } from './file-bytes.ts';
import { finishImport } from './finish-import.ts';
import { FolderImport } from './folder-import.ts';
import type { ImportOptions } from './import-options.ts';
import { readEach } from './read-each.ts';
import { unreadLines } from './results-summary.ts';
import { settleQuestions } from './settle-questions.ts';

const FILE = 'venue.md';

/** `import rules FILE…`: the club's rules as text, into the text of `venue.md`. */
export async function importRules(
  folder: string,
  files: readonly string[],
  options: ImportOptions,
  io: CommandIo,
): Promise<number> {
  const answerPath = answerFileOf(folder, options.answers);
  const venue = await FolderImport.open(folder);
  if (!venue.ok) return refuse(venue.lines, io);
  const read = readEach(files, (file) => readRules(file === '-' ? 'pasted' : basename(file), fileBytes(file)));
  if (!read.ok) return refuse(read.lines, io);
  const staged = new StagedFiles(venue.folder.files);
  const written = partsOf(staged.text(FILE) ?? '');
  const against = rulesVenue(
    venue.folder,
    written.body,
    knownAnglers(folder, venue.folder.content.settings.club, options.keys, io.environment),
  );
  const settled = await settleQuestions(
    (asker) => settleRules(read.papers, against, asker),
    readAnswers(answerPath),
    answerPath,
    options.isJson,
    io,
  );
  if (settled === null) return EXIT.faults;

  const { markdown } = settled.reading;
  if (markdown !== written.body.trim()) {
    staged.put(FILE, `${written.head}\n${markdown}\n`.replaceAll('\n', written.lineEnd));
  }
  tell(written.body.trim(), settled.reading, options.isJson, io);
  return finishImport(
    venue.folder,
    {
      changed: staged.changed(),
      answers: settled.answers,
      answerPath,
      isAgreed: options.isAgreed,
      nothingNew: 'There is nothing new in this',
      done: `Taken in. Read the page of rules before you publish: ${typed('build')}`,
    },
    io,
  );
}

/** `venue.md` in two: the front matter with its closing line, and the text; both with plain ends of lines. */
function partsOf(text: string) {
  const lineEnd = text.includes('\r\n') ? '\r\n' : '\n';
  const plain = text.replaceAll('\r\n', '\n');
  const closing = /\n---[ \t]*(?:\n|$)/.exec(plain);
  const end = closing === null ? plain.length : closing.index + closing[0].length;
  const head = plain.slice(0, end);
  return { head: head.endsWith('\n') ? head : `${head}\n`, body: plain.slice(end), lineEnd };
}

function rulesVenue({ content }: FolderImport, standing: string, isKnown: (words: string) => boolean): RulesVenue {
  const { settings, waters } = content;
  const names = [
    settings.name,
    settings.club,
    settings.emergency.nearestTown ?? '',
    ...waters.flatMap(({ id, record }) => [id, record?.value.name ?? '']),
  ];
  const ours = names.map(headingWords).filter((words) => words !== '');
  const numbers = [...settings.contacts.map(({ phone }) => phone), ...Object.values(settings.emergency)].map(digitsOf);
  const mailboxes = settings.contacts.map(({ email }) => email?.toLowerCase());
  return {
    standing,
    standOffMetres: settings.standOff.metres,
    isOurs: (words) => {
      const plain = headingWords(words);
      return (
        ours.some((name) => name.includes(plain) || plain.includes(name)) ||
        (digitsOf(words).length >= 10 && numbers.includes(digitsOf(words))) ||
        mailboxes.includes(words.toLowerCase())
      );
    },
    isKnownAngler: (words) => {
      const name = anglerName(words);
      return name !== null && !name.isInitialOnly && isKnown(name.full);
    },
  };
}

function digitsOf(text: string | undefined): string {
  return (text ?? '').replace(/\D/g, '').replace(/^44/, '0');
}

function tell(standing: string, { markdown, warnings, unread }: SettledRules, isJson: boolean, io: CommandIo): void {
  const lines = (text: string) => text.split('\n').filter((line) => line.trim() !== '');
  const gone = lines(standing).filter((line) => !lines(markdown).includes(line));
  const added = lines(markdown).filter((line) => !lines(standing).includes(line));
  if (isJson) {
    io.print(JSON.stringify({ added, gone, warnings, unread }, null, 2));
    return;
  }
  io.print(`${FILE}: ${countWords(added.length, 'new line')} of rules, ${gone.length} of those there taken out`);
  for (const line of gone) io.print(`  - ${line}`);
  for (const line of added) io.print(`  + ${line}`);
  for (const line of warnings) io.printError(line);
  for (const line of unreadLines(unread)) io.printError(line);
}
