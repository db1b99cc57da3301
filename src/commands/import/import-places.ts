import { basename } from 'node:path';
import { StagedFiles } from '../../content/intake/staged-files.ts';
import { type PlaceChange, planPlaces } from '../../content/papers/places/plan-places.ts';
import { readDrawing } from '../../content/papers/places/read-drawing.ts';
import { type PlacesWater, settlePlaces } from '../../content/papers/places/settle-places.ts';
import type { Unread } from '../../content/papers/results/result-row.ts';
import { pegKey } from '../../domain/peg.ts';
import { type CommandIo, EXIT } from '../command-io.ts';
import { typed } from '../package-folder.ts';
import { answerFileOf, readAnswers } from './answer-file.ts';
import { refuse } from './ask-to-write.ts';
import { fileBytes } from './file-bytes.ts';
import { finishImport } from './finish-import.ts';
import { FolderImport } from './folder-import.ts';
import type { ImportOptions } from './import-options.ts';
import { readEach } from './read-each.ts';
import { unreadLines } from './results-summary.ts';
import { settleQuestions } from './settle-questions.ts';

/** `import places FILE…`: pegs and maps from a phone's points or a drawing. */
export async function importPlaces(
  folder: string,
  files: readonly string[],
  options: ImportOptions,
  io: CommandIo,
): Promise<number> {
  const answerPath = answerFileOf(folder, options.answers);
  const venue = await FolderImport.open(folder);
  if (!venue.ok) return refuse(venue.lines, io);
  const { content } = venue.folder;
  const read = readEach(files, (file) => readDrawing(basename(file), fileBytes(file)));
  if (!read.ok) return refuse(read.lines, io);
  const waters = content.waters.map(
    ({ id, record, map }): PlacesWater => ({
      id,
      name: record?.value.name ?? id,
      shore: map === null ? null : map.map,
      isNew: false,
    }),
  );
  const things = read.papers.flatMap((drawing) => drawing.things);
  const settled = await settleQuestions(
    (asker) => settlePlaces(things, waters, asker),
    readAnswers(answerPath),
    answerPath,
    options.isJson,
    io,
  );
  if (settled === null) return EXIT.faults;

  const positions = new Map(content.pegs.map(({ value }) => [pegKey(value.water, value.peg), value.at]));
  const staged = new StagedFiles(venue.folder.files);
  const changes = planPlaces(settled.reading, (water, peg) => positions.get(pegKey(water, peg)), staged);
  const unread = [...read.papers.flatMap((drawing) => drawing.unread), ...settled.reading.unread];
  tell(changes, unread, options.isJson, io);
  return finishImport(
    venue.folder,
    {
      changed: staged.changed(),
      answers: settled.answers,
      answerPath,
      isAgreed: options.isAgreed,
      nothingNew: 'There is nothing new in this',
      done: `Taken in. Look at the map before you publish: ${typed('build')}`,
    },
    io,
  );
}

function tell(changes: readonly PlaceChange[], unread: readonly Unread[], isJson: boolean, io: CommandIo): void {
  if (isJson) {
    io.print(JSON.stringify({ changes, unread }, null, 2));
    return;
  }
  for (const { what, words } of changes) io.print(`${what}: ${words}`);
  for (const line of unreadLines(unread)) io.printError(line);
}
