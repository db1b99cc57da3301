import { isAssociation } from '../content/association/load-association.ts';
import { loadVenue } from '../content/load-venue.ts';
import { countWords } from '../domain/count-words.ts';
import { checkAssociation } from './association/check-association.ts';
import { type CommandIo, EXIT } from './command-io.ts';
import { jsonText } from './json-text.ts';
import { printFaults, shownFolder } from './print-faults.ts';
import { readArguments } from './read-arguments.ts';
import { readingProgress } from './reading-progress.ts';
import { venueFolder } from './venue-folder.ts';

/**
 * `check [--json] [--venue FOLDER]`: reads the venue folder and shows every fault in one run, and what was left out.
 * A folder of several venues shows the faults of each. `--json` prints one document: `ok`, `counts`, `faults`, `leftOut`. Warnings alone leave the folder clean.
 */
export async function run(args: readonly string[], io: CommandIo): Promise<number> {
  const { values } = readArguments(args, { venue: { type: 'string' }, json: { type: 'boolean' } });
  const folder = venueFolder(values.venue, io.environment);
  if (isAssociation(folder)) return checkAssociation(folder, values.json === true, io);
  const { venue, faults, leftOut, counts } = await loadVenue(
    folder,
    io.today?.(),
    values.json === true ? undefined : readingProgress(folder, io),
  );
  const isClean = venue !== null;
  if (values.json === true) {
    io.print(jsonText({ ok: isClean, counts, faults, leftOut }));
  } else {
    printFaults(folder, faults, leftOut, io);
    const { waters, pegs, events, sessions, soundings } = counts;
    const read = Object.entries({ water: waters, peg: pegs, event: events, session: sessions, sounding: soundings })
      .map(([word, count]) => countWords(count, word))
      .join(', ');
    if (isClean) io.print(`${shownFolder(folder)} is clean: ${read}.`);
    else if (counts.files > 0) io.printError(`Read ${read}. Nothing is published until the errors are mended.`);
  }
  return isClean ? EXIT.clean : EXIT.faults;
}
