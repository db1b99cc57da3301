import { mkdir, rm } from 'node:fs/promises';
import { handOver } from '../atlas/handed-over.ts';
import { photosInBackground } from '../atlas/photos-in-background.ts';
import { publishedPhotos } from '../atlas/published-photos.ts';
import { withGround } from '../atlas/rating-ground.ts';
import { ratingsInBackground } from '../atlas/ratings-in-background.ts';
import { isAssociation } from '../content/association/load-association.ts';
import { loadVenue } from '../content/load-venue.ts';
import { countWords } from '../domain/count-words.ts';
import { surveyVenue } from '../ground/survey-venue.ts';
import { buildAssociation } from './association/build-association.ts';
import { siteAddress } from './build-address.ts';
import { type CommandIo, EXIT } from './command-io.ts';
import { closedUnseen, closedUnseenWords, nowOfGuide } from './guide-folder/closed-unseen.ts';
import { recoverGuide, replaceGuide, unfinishedGuide } from './guide-folder/replace-guide.ts';
import { tidyWorkshops } from './guide-folder/workshop.ts';
import { writeChanges } from './guide-folder/write-changes.ts';
import { jsonText } from './json-text.ts';
import { outputFolder } from './output-folder.ts';
import { printFaults } from './print-faults.ts';
import { progressLine } from './progress-line.ts';
import { readArguments } from './read-arguments.ts';
import { readingProgress } from './reading-progress.ts';
import { venueFolder } from './venue-folder.ts';

/**
 * `build [--venue FOLDER] [--out FOLDER] [--address ADDRESS] [--quiet] [--json]`: checks the folder, rates its sessions and writes the guide. A folder with
 * faults stops here, and the guide built before stays as it was; a new one takes its place only when it is whole.
 */
export async function run(args: readonly string[], io: CommandIo): Promise<number> {
  const { values } = readArguments(args, {
    venue: { type: 'string' },
    out: { type: 'string' },
    address: { type: 'string' },
    quiet: { type: 'boolean', default: false },
    json: { type: 'boolean', default: false },
  });
  const isSilent = values.quiet || values.json;
  const say = (line: string) => (isSilent ? undefined : io.print(line));
  // Steps that take longer than a second, one plain line each.
  const step = (line: string) => (isSilent ? undefined : io.printError(line));
  const folder = venueFolder(values.venue, io.environment);
  if (isAssociation(folder)) {
    const { out, address, quiet: isQuiet, json: isJson } = values;
    return buildAssociation(folder, { out, address, isQuiet, isJson }, io);
  }
  const out = outputFolder(values.out, folder);
  if (recoverGuide(out)) say('A build was stopped as it put its guide in place: that guide stands there again.');
  tidyWorkshops();
  // Astro takes its time to load, and the disk its time to give the folder.
  const loading = import('./guide-folder/write-pages.ts');
  // Told by whoever waits for it: a folder with faults does not.
  loading.catch(() => undefined);
  const read = await loadVenue(folder, io.today?.(), isSilent ? undefined : readingProgress(folder, io));
  const { venue, faults, leftOut } = read;
  if (values.json) io.print(jsonText({ ok: venue !== null, out, faults, leftOut }));
  else printFaults(folder, faults, leftOut, io);
  if (venue === null) {
    io.printError('Nothing was built. Mend these faults and build again; the guide built before is untouched.');
    return EXIT.faults;
  }
  const survey = surveyVenue(venue);
  const stated = values.address === undefined ? {} : { SITE_ADDRESS: values.address };
  const address = siteAddress({ ...io.environment, VENUE_DIR: folder, ...stated }, venue);
  const worth = progressLine(`Working out worth from ${countWords(venue.sessions.length, 'session')}`, io);
  const ended = new AbortController();
  const { signal } = ended;
  const told = isSilent || venue.sessions.length === 0 ? {} : worth;
  const { ratings } = await ratingsInBackground(withGround(venue, survey), { ...told, signal });
  // Ratings keep every processor busy, the pages after them one, and photographs are the last of those.
  const copied = () => photosInBackground(publishedPhotos(venue, folder), signal);
  void ratings.then(copied, () => undefined);
  // What was checked is what is built, though a file be edited in between.
  handOver({ folder, read, survey, ratings });

  const unfinished = unfinishedGuide(out);
  try {
    const { writePages } = await loading;
    // Whether anything may be written there is better known before all the work.
    await mkdir(unfinished, { recursive: true });
    const pages = `Writing the pages of ${countWords(venue.pegs.length, 'peg')}`;
    step(`${pages}.`);
    await writePages(folder, address, unfinished, howFar(pages, isSilent ? {} : io));
    await writeChanges(unfinished, out);
    const unseen = closedUnseen(await nowOfGuide(out), await nowOfGuide(unfinished));
    if (unseen !== null) io.printError(closedUnseenWords(unseen));
    replaceGuide(out);
  } finally {
    // What is still being worked out for a guide that failed nobody waits for.
    ended.abort();
    // Where a disk refuses this too, the trouble that led here is what has to be told; the next build clears it away.
    await rm(unfinished, { recursive: true, force: true }).catch(() => undefined);
  }
  say(
    `Built the guide of ${venue.settings.name}: ${countWords(venue.pegs.length, 'peg')}, ${countWords(venue.waters.length, 'water')}.`,
  );
  return EXIT.clean;
}

/** Shows how many pages are written, where there is a terminal to show it on. */
function howFar(step: string, { showProgress }: Pick<CommandIo, 'showProgress'>) {
  return showProgress && ((pages: number) => showProgress(`${step}: ${countWords(pages, 'page')} so far`));
}
