import { withGround } from '../atlas/rating-ground.ts';
import { loadRatings } from '../atlas/ratings-cache.ts';
import { loadVenue } from '../content/load-venue.ts';
import { countWords } from '../domain/count-words.ts';
import { MONTHS, type Month, monthOf } from '../domain/day.ts';
import type { VenueSettings } from '../domain/venue.ts';
import { surveyVenue } from '../ground/survey-venue.ts';
import type { BagTables, Ratings } from '../ratings/ratings.ts';
import { type CommandIo, EXIT } from './command-io.ts';
import { jsonText } from './json-text.ts';
import { printFaults } from './print-faults.ts';
import { progressLine } from './progress-line.ts';
import { ratingsJson } from './ratings-json.ts';
import { ratingsText } from './ratings-text.ts';
import { readArguments, UsageError } from './read-arguments.ts';
import { readingProgress } from './reading-progress.ts';
import { venueFolder } from './venue-folder.ts';

/**
 * `ratings [--venue FOLDER] [--bag PART] [--month 1..12] [--json | --everything]`: prints the seasonal worth of the
 * total bag or of one bag part: one month in words, the year as one JSON document, or every table there is.
 */
export async function run(args: readonly string[], io: CommandIo): Promise<number> {
  const { values } = readArguments(args, {
    venue: { type: 'string' },
    bag: { type: 'string', default: 'total' },
    month: { type: 'string' },
    json: { type: 'boolean', default: false },
    everything: { type: 'boolean', default: false },
  });
  const folder = venueFolder(values.venue, io.environment);
  const { venue, faults, leftOut } = await loadVenue(folder, undefined, readingProgress(folder, io));
  printFaults(folder, faults, leftOut, io);
  if (venue === null) {
    io.printError('Nothing was rated. Mend these faults first.');
    return EXIT.faults;
  }
  refuseUnknownBag(values.bag, venue.settings);
  const month = values.month === undefined ? monthOf(venue.settings.guideDay) : readMonth(values.month);
  const worth = progressLine(`Working out worth from ${countWords(venue.sessions.length, 'session')}`, io);
  const ratings = await loadRatings(withGround(venue, surveyVenue(venue)), worth);
  const tables = tablesOf(values.bag, ratings);
  if (values.everything) io.print(jsonText(ratings));
  else if (values.json) io.print(jsonText(ratingsJson(ratings, tables)));
  else io.print(ratingsText(venue, ratings, tables, month));
  return EXIT.clean;
}

function readMonth(text: string): Month {
  const month = MONTHS.find((each) => String(each) === text);
  if (month === undefined) throw new UsageError(`Unexpected month "${text}", expected a number from 1 to 12.`);
  return month;
}

function refuseUnknownBag(bag: string, settings: VenueSettings): void {
  const known = ['total', ...settings.bagParts.map(({ id }) => id)];
  if (!known.includes(bag)) {
    throw new UsageError(`Unexpected bag "${bag}", expected one of: ${known.join(', ')}.`);
  }
}

function tablesOf(bag: string, ratings: Ratings): BagTables {
  const tables = ratings.bags.find((each) => each.bag === bag);
  if (tables === undefined) {
    throw new UsageError(`No session of this venue logs the weight of "${bag}", so there is nothing to rate.`);
  }
  return tables;
}
