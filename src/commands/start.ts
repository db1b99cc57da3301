import { existsSync, readFileSync } from 'node:fs';
import { mkdir, readdir, writeFile } from 'node:fs/promises';
import { basename, dirname, join, resolve } from 'node:path';
import { firstVenue } from '../content/first-venue.ts';
import { askVenuePlan } from '../content/new-venue/ask-venue-plan.ts';
import { clubRepository } from '../content/new-venue/club-repository.ts';
import { planFiles } from '../content/new-venue/plan-files.ts';
import { typed } from '../content/typed-command.ts';
import { type Day, isDay } from '../domain/day.ts';
import { type CommandIo, EXIT } from './command-io.ts';
import { answerFileOf, readAnswers, writeAnswers } from './import/answer-file.ts';
import { settleQuestions } from './import/settle-questions.ts';
import { shownFolder, typedFor } from './print-faults.ts';
import { readArguments, UsageError } from './read-arguments.ts';
import { programVersion } from './version.ts';

/**
 * `start FOLDER [--answers FILE] [--repo] [--example] [--day YYYY-MM-DD]`: asks what a club knows of its venue and writes a
 * first folder that checks and builds. Without a person to ask and without answers it writes an example to fill in.
 * `--repo` writes what a repository of the club's own needs beside it. Touches nothing in a folder that holds anything.
 */
export async function run(args: readonly string[], io: CommandIo): Promise<number> {
  const { values, positionals } = readArguments(
    args,
    {
      day: { type: 'string' },
      venue: { type: 'string' },
      answers: { type: 'string' },
      example: { type: 'boolean' },
      repo: { type: 'boolean' },
    },
    true,
  );
  const name = positionals[0] ?? values.venue ?? (values.repo === true ? 'content' : undefined);
  if (name === undefined || positionals.length > 1)
    throw new UsageError(`Expected one folder: ${typed('start my-venue')}`);
  const day = values.day ?? new Date().toISOString().slice(0, 10);
  if (!isDay(day)) throw new UsageError(`Unexpected day "${day}", expected one such as 2026-11-21.`);
  const folder = resolve(name);
  const inTheWay = await namesIn(folder);
  if (inTheWay === null) {
    io.printError(`${shownFolder(folder)} is a file. Name a folder that is new or empty.`);
    return EXIT.faults;
  }
  if (inTheWay.length > 0) {
    io.printError(
      `${shownFolder(folder)} already holds ${inTheWay.slice(0, 3).join(', ')}. Name a folder that is new or empty.`,
    );
    return EXIT.faults;
  }
  const isExample = values.example === true || (io.ask === undefined && values.answers === undefined);
  const files = isExample ? firstVenue(day) : await askedVenue(folder, day, values.answers ?? null, io);
  if (files === null) return EXIT.faults;
  for (const [path, text] of files) await writeNew(join(folder, path), text);
  io.print(
    isExample
      ? `Wrote a first venue into ${shownFolder(folder)}. Every name and figure in it is an example: replace them.`
      : `Wrote ${shownFolder(folder)}. Its maps are plain boxes and its pegs stand where none is, and every page says that the venue is made up, until you import their places (${typedFor('import places FILE', folder)}) and take "invented: true" out of venue.md.`,
  );
  if (values.repo === true) await writeRepository(dirname(folder), basename(folder), io);
  io.print(`Then: ${typedFor('check', folder)}`);
  return EXIT.clean;
}

async function askedVenue(
  folder: string,
  day: Day,
  named: string | null,
  io: CommandIo,
): Promise<ReadonlyMap<string, string> | null> {
  const answerPath = answerFileOf(folder, named);
  const settled = await settleQuestions(
    (asker) => askVenuePlan(day, asker),
    readAnswers(answerPath),
    answerPath,
    false,
    io,
  );
  if (settled === null || settled.reading === null) return null;
  if (named === null) {
    await mkdir(dirname(answerPath), { recursive: true });
    writeAnswers(answerPath, settled.answers);
  }
  return planFiles(settled.reading);
}

/** Writes the files of a club's repository beside its venue folder, and leaves those that are there as they are. */
async function writeRepository(root: string, venue: string, io: CommandIo): Promise<void> {
  const manifest = join(root, 'package.json');
  const own = existsSync(manifest) ? (JSON.parse(readFileSync(manifest, 'utf8')) as Record<string, unknown>) : null;
  for (const [path, text] of clubRepository({ venue, version: programVersion(), manifest: own })) {
    const place = join(root, path);
    if (path !== 'package.json' && existsSync(place)) {
      io.printError(`${path} is there already and was left as it is.`);
      continue;
    }
    await mkdir(dirname(place), { recursive: true });
    await writeFile(place, text);
    io.print(`Wrote ${path}`);
  }
}

async function writeNew(path: string, text: string): Promise<void> {
  await mkdir(dirname(path), { recursive: true });
  await writeFile(path, text, { flag: 'wx' });
}

/** What a folder holds, hidden names aside; nothing where there is no folder yet; null where a file stands in its place. */
async function namesIn(folder: string): Promise<readonly string[] | null> {
  try {
    return (await readdir(folder)).filter((entry) => !entry.startsWith('.'));
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    if (code === 'ENOENT') return [];
    if (code === 'ENOTDIR') return null;
    throw error;
  }
}
