import { leagueTable } from '../atlas/league-table.ts';
import { loadVenue } from '../content/load-venue.ts';
import { countWords } from '../domain/count-words.ts';
import { formatWeight } from '../domain/weight.ts';
import { type CommandIo, EXIT } from './command-io.ts';
import { jsonText } from './json-text.ts';
import { printFaults, typedFor } from './print-faults.ts';
import { readArguments, UsageError } from './read-arguments.ts';
import { textTable } from './text-table.ts';
import { venueFolder } from './venue-folder.ts';

/**
 * `league NAME [--json] [--venue FOLDER]`: the standings of a league by the references of the log, for the secretary. No page
 * of the guide shows them, since they are one angler's results.
 */
export async function run(args: readonly string[], io: CommandIo): Promise<number> {
  const { values, positionals } = readArguments(
    args,
    { venue: { type: 'string' }, json: { type: 'boolean', default: false } },
    true,
  );
  const folder = venueFolder(values.venue, io.environment);
  const { venue, faults, leftOut } = await loadVenue(folder);
  printFaults(folder, faults, leftOut, io);
  if (venue === null) return EXIT.faults;
  const leagues = venue.leagues ?? [];
  const [named, ...more] = positionals;
  const league = leagues.find(({ id }) => id === named?.replace(/^.*\//, '').replace(/\.md$/, ''));
  if (league === undefined || more.length > 0) {
    const known =
      leagues.length === 0 ? 'there is no file in leagues/ yet' : `one of ${leagues.map(({ id }) => id).join(', ')}`;
    throw new UsageError(`league takes one league: ${known}.`);
  }
  const table = leagueTable(venue, league);
  if (values.json) {
    io.print(jsonText({ league: league.id, ...table }));
    return EXIT.clean;
  }
  const best = league.best === null ? 'all count' : `the best ${league.best} count`;
  io.print(`${league.name}: ${countWords(table.fished.length, 'match', 'matches')} in the log, ${best}.`);
  if (table.toCome.length > 0) io.print(`Not in the log yet: ${table.toCome.join(', ')}.`);
  if (table.unnamed > 0)
    io.print(`${countWords(table.unnamed, 'bag')} without a reference: no angler gets its points.`);
  const rows = table.standings.map(({ place, angler, points, grams, matches }) => [
    `${place}  ${angler}`,
    String(points),
    ...matches.map(({ points: own, counts }) =>
      own === null ? (counts ? 'missed' : '–') : counts ? String(own) : `(${own})`,
    ),
    formatWeight(grams, venue.settings.units),
  ]);
  for (const line of textTable([['', 'points', ...table.fished.map((id) => id.slice(0, 10)), 'weight'], ...rows]))
    io.print(line);
  io.print(
    `missed: ${countWords(table.missed, 'point')}. In brackets: dropped; –: missed and dropped. Ties: more of the best points, then the heavier season; who is level still shares the place. Which reference somebody has: ${typedFor('anglers who NAME', folder)}`,
  );
  return EXIT.clean;
}
