import { anglerName } from '../content/anglers/angler-name.ts';
import { anglerLogs } from '../content/anglers/assign-references.ts';
import { type RegisterRow, resolveAngler } from '../content/anglers/register.ts';
import { rewriteReference, sessionFiles, sharedEvents } from '../content/anglers/rewrite-references.ts';
import { foldersOfRegister } from '../content/association/load-association.ts';
import { formatFaults } from '../content/format-fault.ts';
import { StagedFiles } from '../content/intake/staged-files.ts';
import { countWords } from '../domain/count-words.ts';
import { type CommandIo, EXIT } from './command-io.ts';
import { type AnglerFiles, openAnglerFiles, writeRegister } from './import/angler-files.ts';
import { askToWrite, refuse } from './import/ask-to-write.ts';
import { FolderImport } from './import/folder-import.ts';
import { readArguments, UsageError } from './read-arguments.ts';
import { venueFolder } from './venue-folder.ts';

/**
 * `anglers who NAME`, `anglers merge REF INTO`, `anglers forget REF` (`[--keys FOLDER] [--yes] [--venue FOLDER]`): finds a
 * reference, makes two that are one person into one, or takes a person out of the log on their request. Stores no name.
 */
export async function run(args: readonly string[], io: CommandIo): Promise<number> {
  const { values, positionals } = readArguments(
    args,
    { venue: { type: 'string' }, keys: { type: 'string' }, yes: { type: 'boolean' } },
    true,
  );
  const [word, ...names] = positionals;
  const wanted = { who: 1, merge: 2, forget: 1 }[word ?? ''];
  if (wanted === undefined || (word === 'who' ? names.length < 1 : names.length !== wanted)) {
    throw new UsageError('Expected: anglers who NAME, anglers merge REF INTO, or anglers forget REF.');
  }
  const folder = venueFolder(values.venue, io.environment);
  // A person who is one reference in the logs of all venues is put right in all of them, or the others would keep who is to be forgotten.
  const folders: FolderImport[] = [];
  for (const each of foldersOfRegister(folder)) {
    const venue = await FolderImport.open(each);
    if (!venue.ok) return refuse(venue.lines, io);
    folders.push(venue.folder);
  }
  try {
    const { club } = folders[0]!.content.settings;
    const anglers = openAnglerFiles(folder, club, values.keys ?? null, io.environment);
    if (word === 'who') return who(names.join(' '), anglers, folders, io);
    const [ref = '', into = ''] = names;
    return await rewrite(ref, word === 'merge' ? into : null, anglers, folders, values.yes === true, io);
  } catch (error) {
    if (!(error instanceof UsageError)) throw error;
    return refuse([error.message], io);
  }
}

function who(written: string, anglers: AnglerFiles, folders: readonly FolderImport[], io: CommandIo): number {
  const name = anglerName(written);
  if (name === null) throw new UsageError(`"${written}" holds no name.`);
  const logs = folders.map(({ content }) => anglerLogs(content));
  const resolved = resolveAngler(anglers.key, anglers.rows, name);
  const refs = resolved.kind === 'known' ? [resolved.ref] : resolved.kind === 'doubt' ? resolved.candidates : [];
  if (refs.length === 0) {
    io.printError('Nobody of that name, or one like it, is in the register.');
    return EXIT.faults;
  }
  if (resolved.kind === 'doubt') io.print(`It may be any of these (${resolved.because}):`);
  for (const ref of refs) {
    const found = logs.flatMap((log) => log.get(ref) ?? []);
    if (found.length === 0) io.print(`${ref}  not in the log`);
    for (const { sessions, last, waters } of found) {
      io.print(`${ref}  ${countWords(sessions, 'session')}, last on ${last}, on ${waters.join(', ')}`);
    }
  }
  return EXIT.clean;
}

async function rewrite(
  ref: string,
  into: string | null,
  anglers: AnglerFiles,
  folders: readonly FolderImport[],
  isYes: boolean,
  io: CommandIo,
): Promise<number> {
  const logs = folders.map((folder) => ({
    folder,
    paths: sessionFiles(folder.texts.keys()),
    staged: new StagedFiles(folder.files),
  }));
  const known = new Set([
    ...anglers.rows.map((row) => row.ref),
    ...folders.flatMap(({ content }) => content.sessions.flatMap(({ value }) => value.angler ?? [])),
  ]);
  const unknown = [ref, ...(into === null ? [] : [into])].filter((one) => !known.has(one));
  if (unknown.length > 0) return refuse([`Nobody has the reference ${unknown.join(' or ')}.`], io);
  if (into !== null) {
    if (into === ref) return refuse(['These are one reference already.'], io);
    const both = logs.flatMap(({ staged, paths }) => sharedEvents(staged, paths, ref, into));
    if (both.length > 0) {
      return refuse([`${ref} and ${into} both fished ${both.slice(0, 3).join(', ')}: they are two people.`], io);
    }
  }
  const counts = logs.map(({ staged, paths }) => rewriteReference(staged, paths, ref, into ?? ''));
  const count = counts.reduce((sum, each) => sum + each, 0);
  const rows = anglers.rows.flatMap((row): readonly RegisterRow[] => {
    if (row.ref !== ref) return [row];
    return into === null ? [] : [{ ...row, ref: into }];
  });
  const broken = logs.flatMap(({ folder, staged }) => folder.faultsAfter(staged.changed()));
  if (broken.length > 0) return refuse(['The folder would not be valid any more:', ...formatFaults(broken)], io);
  const what = into === null ? 'will name nobody, and the register forgets the person' : `will be ${into}`;
  io.print(`${ref} in ${countWords(count, 'session')} ${what}.`);
  if (into === null) {
    io.print('Copies of the folder and guides published before still hold the reference, which says no name.');
  }
  const agreed = await askToWrite(isYes, io);
  if (agreed !== true) return agreed;
  writeRegister(anglers, rows);
  // Each log is changed as a whole; where one cannot be written, the same command run again does those that are left.
  const failures = logs.flatMap(({ folder, staged }) => folder.write(staged.changed()) ?? []);
  for (const failure of failures) io.printError(failure);
  return failures.length === 0 ? EXIT.clean : EXIT.faults;
}
