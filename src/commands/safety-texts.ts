import { listedSafetyTexts } from '../atlas/safety-advice.ts';
import { loadVenue } from '../content/load-venue.ts';
import { type CommandIo, EXIT } from './command-io.ts';
import { jsonText } from './json-text.ts';
import { printFaults } from './print-faults.ts';
import { readArguments } from './read-arguments.ts';
import { venueFolder } from './venue-folder.ts';

/**
 * `safety-texts [--json] [--venue FOLDER]`: prints every safety text of the guide, with the venue's own numbers in it, and
 * what it rests on, so that a safety professional can check them all in one sitting.
 */
export async function run(args: readonly string[], io: CommandIo): Promise<number> {
  const { values } = readArguments(args, { venue: { type: 'string' }, json: { type: 'boolean' } });
  const folder = venueFolder(values.venue, io.environment);
  const { venue, faults, leftOut } = await loadVenue(folder);
  if (venue === null) {
    printFaults(folder, faults, leftOut, io);
    return EXIT.faults;
  }
  const texts = listedSafetyTexts(venue.settings);
  if (values.json === true) {
    io.print(jsonText(texts));
    return EXIT.clean;
  }
  for (const [place, group] of Map.groupBy(texts, (text) => text.place)) {
    io.print(place);
    for (const { words, source } of group) io.print(`  ${words}\n    [${source}]`);
  }
  const unsourced = texts.filter(({ sourceId }) => sourceId === 'practice').length;
  io.print(
    `\n${texts.length} texts: ${texts.length - unsourced} with a source, ${unsourced} common practice without one.`,
  );
  return EXIT.clean;
}
