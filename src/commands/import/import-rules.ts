import { basename } from 'node:path';
import { anglerName } from '../../content/anglers/angler-name.ts';
import { headingWords } from '../../content/papers/headings.ts';
import { readRules } from '../../content/papers/rules/read-rules.ts';
import { type RulesVenue, type SettledRules, settleRules } from '../../content/papers/rules/settle-rules.ts';
import { frontMatterPlace } from '../../content/sources/front-matter-place.ts';
import { countWords } from '../../domain/count-words.ts';
import type { CommandIo } from '../command-io.ts';
import { jsonText } from '../json-text.ts';
import { knownAnglers } from './angler-files.ts';
import { fileBytes } from './file-bytes.ts';
import type { FolderImport } from './folder-import.ts';
import { unreadLines } from './results-summary.ts';
import { takingPapers } from './take-papers.ts';

const FILE = 'venue.md';

/** `import rules FILE…`: the club's rules as text, into the text of `venue.md`. */
export const importRules = takingPapers((options, io, folder) => ({
  read: (file) => readRules(file === '-' ? 'pasted' : basename(file), fileBytes(file)),
  settle: (papers, venue, asker) => {
    const { club } = venue.content.settings;
    const isKnown = knownAnglers(folder, club, options.keys, io.environment);
    return settleRules(papers, rulesVenue(venue, partsOf(venue.files.text(FILE) ?? '').body, isKnown), asker);
  },
  stage: (reading, staged) => {
    const { head, body, lineEnd } = partsOf(staged.text(FILE) ?? '');
    const { markdown } = reading;
    if (markdown !== body.trim()) staged.put(FILE, `${head}\n${markdown}\n`.replaceAll('\n', lineEnd));
    tell(body.trim(), reading, options.isJson, io);
  },
  next: 'Read the page of rules before you publish',
}));

/** `venue.md` in two: the front matter with its closing line, and the text; both with plain ends of lines. */
function partsOf(text: string) {
  const lineEnd = text.includes('\r\n') ? '\r\n' : '\n';
  const plain = text.replaceAll('\r\n', '\n');
  const place = frontMatterPlace(plain);
  const end = typeof place === 'string' ? plain.length : place.body;
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
    io.print(jsonText({ added, gone, warnings, unread }));
    return;
  }
  io.print(`${FILE}: ${countWords(added.length, 'new line')} of rules, ${gone.length} of those there taken out`);
  for (const line of gone) io.print(`  - ${line}`);
  for (const line of added) io.print(`  + ${line}`);
  for (const line of warnings) io.printError(line);
  for (const line of unreadLines(unread)) io.printError(line);
}
