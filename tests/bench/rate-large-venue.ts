import { loadRatings } from '../../src/atlas/ratings-cache.ts';
import { type RatedVenue, ratedVenue } from '../../src/ratings/rated-venue.ts';
import { simulateFromModel } from '../demo/simulate-from-model.ts';
import { LARGE_RUNS, LARGE_VENUE, type LargeRun } from './large-venue.ts';

/** One run of `rateLargeVenue` in this process: its name and the folder of kept ratings are its arguments, its row is what it prints. */
const [asked, folder] = process.argv.slice(2);
const run = LARGE_RUNS.find((name) => name === asked);
if (run === undefined || folder === undefined) {
  throw new Error(`Unexpected run "${asked}", expected one of: ${LARGE_RUNS.join('; ')}, and a folder`);
}
const venue = venueOf(run);
const clock = performance.now();
const start = process.cpuUsage();
await loadRatings(venue, { folder, progress: (what) => console.error(`${run}: ${what}`) });
const { user, system } = process.cpuUsage(start);
const row: LargeRun = {
  run,
  sessions: venue.sessions.length,
  'clock seconds': Math.round(performance.now() - clock) / 1000,
  'processor seconds': Math.round((user + system) / 1e4) / 100,
  'peak memory, MB': Math.round(process.resourceUsage().maxRSS / 1024),
};
process.stdout.write(JSON.stringify(row));

/** Only what the ratings read: the truth it was drawn from is let go. */
function venueOf(name: LargeRun['run']): RatedVenue {
  const all = ratedVenue(simulateFromModel(LARGE_VENUE).venue);
  if (name === 'after one match') return all;
  const last = all.events.at(-1)!;
  return {
    ...all,
    events: all.events.slice(0, -1),
    sessions: all.sessions.filter(({ event }) => event !== last.id),
  };
}
