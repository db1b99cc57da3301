import { basename } from 'node:path';
import { anglerLogs, assignReferences } from '../../content/anglers/assign-references.ts';
import type { Content } from '../../content/content.ts';
import { editFrontMatter } from '../../content/edit-front-matter.ts';
import { matchResultRows } from '../../content/intake/match-result-rows.ts';
import { StagedFiles } from '../../content/intake/staged-files.ts';
import type { Asker } from '../../content/papers/questions.ts';
import { planResults } from '../../content/papers/results/plan-results.ts';
import type { ResultMatch } from '../../content/papers/results/result-row.ts';
import type { Match } from '../../domain/match.ts';
import { isMatchFile, type MatchFile, readMatchFile } from '../../match-day/match-file.ts';
import { mergedNotes, type Note } from '../../match-day/match-log.ts';
import { type CommandIo, EXIT } from '../command-io.ts';
import { type AnglerFiles, drawOfRun, openAnglerFiles, writeRegister } from '../import/angler-files.ts';
import { answerFileOf, readAnswers } from '../import/answer-file.ts';
import { refuse } from '../import/ask-to-write.ts';
import { finishImport } from '../import/finish-import.ts';
import { FolderImport } from '../import/folder-import.ts';
import { changeLines } from '../import/results-summary.ts';
import { settleQuestions } from '../import/settle-questions.ts';
import { typedFor } from '../print-faults.ts';
import { textsOfKind } from './texts-of-files.ts';

/** A file larger than this is no match day. */
const MAX_BYTES = 5_000_000;

/** The texts of the files named, where the first of them is a match day's; null where they are something else. */
export function textsOfMatchDay(paths: readonly string[]): ReadonlyMap<string, string> | null {
  return textsOfKind(paths, MAX_BYTES, isMatchFile);
}

/**
 * Takes a match day into the log: the files of one or several phones together, shown first and written all or nothing. The same
 * file again adds nothing; a corrected weight takes the place of the old one.
 */
export async function takeMatch(
  folder: string,
  texts: ReadonlyMap<string, string>,
  options: { readonly isAgreed: boolean; readonly keys: string | null },
  io: CommandIo,
): Promise<number> {
  const read = await readFiles(texts);
  if (!read.ok) return refuse(read.lines, io);
  const venue = await FolderImport.open(folder);
  if (!venue.ok) return refuse(venue.lines, io);
  const { content } = venue.folder;
  const match = content.matches.find(({ value }) => value.id === read.match)?.value;
  if (match === undefined || read.venue !== content.settings.name) {
    return refuse(
      [
        `${read.name} is of the match ${read.match} at ${read.venue}; this folder is ${content.settings.name}${match === undefined ? ' and has no such match' : ''}.`,
      ],
      io,
    );
  }
  const other = otherMatchOfDay(content, match);
  if (other !== undefined) {
    return refuse(
      [
        `${other.name} of the same day is in the log for the same water, and a water has one match a day there: to take in ${match.name} would replace its rows. Put both into one file in matches/, each as sections of its own, and take their phones’ files in with that.`,
      ],
      io,
    );
  }
  const results = matchResultRows(match, read.notes, content.settings, read.name, usualHours(content, match));
  if (!results.ok) return refuse(results.lines, io);

  const hasNames = results.match.rows.some(({ name }) => name !== '');
  const answerPath = answerFileOf(folder, null);
  const anglers = hasNames ? openAnglerFiles(folder, content.settings.club, options.keys, io.environment) : null;
  const settled = await settleQuestions(
    (asker) => (anglers === null ? null : referencesOf(results.match, content, anglers, asker)),
    readAnswers(answerPath),
    answerPath,
    false,
    io,
  );
  if (settled === null) return EXIT.faults;
  const { reading: assigned, answers } = settled;
  const staged = new StagedFiles(venue.folder.files);
  const changes = planResults(
    [results.match],
    content.events.map(({ value }) => value),
    (name) => assigned?.references.get(name),
    staged,
  );
  putDays(staged, match, content);
  for (const line of [...changeLines(changes), ...results.told]) io.print(line);
  if (!hasNames) io.print('Without names: whose bags these were stays open, or as it was.');
  return finishImport(
    venue.folder,
    {
      changed: staged.changed(),
      answers,
      answerPath,
      isAgreed: options.isAgreed,
      nothingNew: 'There is nothing new in this match day',
      done: `Taken in. Build the guide anew: ${typedFor('build', folder)}`,
      ...(anglers === null || assigned === null ? {} : { before: () => writeRegister(anglers, assigned.rows) }),
    },
    io,
  );
}

type FilesRead =
  | {
      readonly ok: true;
      readonly match: string;
      readonly venue: string;
      readonly name: string;
      readonly notes: readonly Note[];
    }
  | { readonly ok: false; readonly lines: readonly string[] };

/** The notes of all files as one list; they have to be of one match. */
async function readFiles(texts: ReadonlyMap<string, string>): Promise<FilesRead> {
  const lines: string[] = [];
  const files: MatchFile[] = [];
  for (const [path, text] of texts) {
    const read = await readMatchFile(text);
    if (!read.ok) lines.push(`${basename(path)}: ${read.why}`);
    else if (read.isEdited)
      lines.push(`${basename(path)} was changed since the phone handed it over: ask for it to be sent again.`);
    else files.push(read.file);
  }
  const [first] = files;
  if (lines.length > 0 || first === undefined) return { ok: false, lines };
  const other = files.find(({ match, venue }) => match !== first.match || venue !== first.venue);
  if (other !== undefined) {
    return {
      ok: false,
      lines: [`These files are of two matches, ${first.match} and ${other.match}: take them in one after the other.`],
    };
  }
  // Names first, so that a file without them cannot stand in their place.
  const inOrder = files.toSorted((a, b) => Number(b.hasNames) - Number(a.hasNames));
  const notes = inOrder.reduce<readonly Note[]>((all, file) => mergedNotes(all, file.notes).notes, []);
  return {
    ok: true,
    match: first.match,
    venue: first.venue,
    name: [...texts.keys()].map((path) => basename(path)).join(', '),
    notes,
  };
}

function referencesOf(results: ResultMatch, content: Content, anglers: AnglerFiles, asker: Asker) {
  const named = results.rows.filter(({ name }) => name !== '');
  return assignReferences(
    named.map(({ name }) => ({ text: name, match: results.day })),
    anglers.key,
    anglers.rows,
    anglerLogs(content),
    DRAW,
    asker,
  );
}

const DRAW = drawOfRun();

/** The match has been fished, and the day of the guide is no earlier than it. */
function putDays(staged: StagedFiles, match: Match, { settings }: Content): void {
  const path = `matches/${match.id}.md`;
  const text = staged.text(path);
  if (text !== null && match.status !== 'fished') {
    staged.put(path, editFrontMatter(text, [{ kind: 'set', path: ['status'], value: 'fished' }]));
  }
  const venue = staged.text('venue.md');
  if (venue !== null && settings.guideDay < match.day) {
    staged.put('venue.md', editFrontMatter(venue, [{ kind: 'set', path: ['guide-day'], value: match.day }]));
  }
}

/** Another match of that day that shares a water and is in the log already. */
function otherMatchOfDay({ matches }: Content, { id, day, waters }: Match): Match | undefined {
  return matches
    .map(({ value }) => value)
    .find(
      (other) =>
        other.id !== id &&
        other.day === day &&
        other.status === 'fished' &&
        other.waters.some((water) => waters.includes(water)),
    );
}

function usualHours(content: Content, match: Match): number | undefined {
  return content.events
    .map(({ value }) => value)
    .filter(({ water, day }) => match.waters.includes(water) && day < match.day)
    .sort((a, b) => (a.day < b.day ? 1 : -1))[0]?.hours;
}
