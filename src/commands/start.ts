import { mkdir, readdir, writeFile } from 'node:fs/promises';
import { dirname, join, resolve } from 'node:path';
import { firstVenue } from '../content/first-venue.ts';
import { isDay } from '../domain/day.ts';
import { type CommandIo, EXIT } from './command-io.ts';
import { typed } from './package-folder.ts';
import { shownFolder } from './print-faults.ts';
import { readArguments, UsageError } from './read-arguments.ts';

/** `start FOLDER [--day YYYY-MM-DD]`: writes a first venue folder to fill in. Touches nothing in a folder that holds anything. */
export async function run(args: readonly string[], io: CommandIo): Promise<number> {
  const { values, positionals } = readArguments(args, { day: { type: 'string' }, venue: { type: 'string' } }, true);
  const name = positionals[0] ?? values.venue;
  if (name === undefined || positionals.length > 1) throw new UsageError('Expected one folder: venue -- start FOLDER');
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
  for (const [path, text] of firstVenue(day)) {
    await mkdir(dirname(join(folder, path)), { recursive: true });
    await writeFile(join(folder, path), text, { flag: 'wx' });
  }
  io.print(`Wrote a first venue into ${shownFolder(folder)}. Every name and figure in it is an example: replace them.`);
  io.print(`Then: ${typed(`check --venue ${shownFolder(folder)}`)}`);
  return EXIT.clean;
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
