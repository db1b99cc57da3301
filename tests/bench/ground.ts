import { availableParallelism, loadavg } from 'node:os';
import { surveyVenue } from '../../src/ground/survey-venue.ts';
import { makeVenue, USUAL_VENUE } from '../demo/make-venue.ts';

/**
 * Times the survey of large generated venues and prints a table: `npm run bench:ground`. The budget is 10 s for 5,000
 * pegs and 50,000 soundings on two cores. The survey uses one core, so its processor time is what it takes on a machine
 * with nothing else to do, and is what the budget is held against.
 */
const BUDGET_SECONDS = 10;

interface Case {
  readonly name: string;
  readonly waters: number;
  readonly pegs: number;
  readonly soundings: number;
}

const CASES: readonly Case[] = [
  { name: 'a venue of the usual size', waters: 3, pegs: 96, soundings: 1_200 },
  { name: 'twenty large waters', waters: 20, pegs: 5_000, soundings: 50_000 },
  { name: 'one water with all of it', waters: 1, pegs: 5_000, soundings: 50_000 },
];

const rows = CASES.map(({ name, waters, pegs, soundings }) => {
  const { venue } = makeVenue({
    ...USUAL_VENUE,
    seed: 7,
    waters,
    pegs,
    soundings,
    anglers: 20,
    events: 4,
    sessions: 40,
  });
  const start = performance.now();
  const startCpu = process.cpuUsage();
  const survey = surveyVenue(venue);
  const seconds = (performance.now() - start) / 1000;
  const { user, system } = process.cpuUsage(startCpu);
  const processorSeconds = (user + system) / 1e6;
  const plumbed = Object.values(survey.waters).reduce((sum, { depth }) => sum + (depth?.soundings ?? 0), 0);
  return {
    venue: name,
    waters: venue.waters.length,
    pegs: Object.keys(survey.pegs).length,
    soundings: venue.soundings.length,
    'soundings used': plumbed,
    'outline corners': venue.waters.reduce((sum, water) => sum + water.map.outline.length, 0),
    seconds: Math.round(seconds * 100) / 100,
    'processor seconds': Math.round(processorSeconds * 100) / 100,
    'within 10 s': processorSeconds <= BUDGET_SECONDS ? 'yes' : 'NO',
    'peak memory, MB': Math.round(process.resourceUsage().maxRSS / 1024),
  };
});

console.log(`Node ${process.version}, ${availableParallelism()} cores, load ${loadavg()[0]!.toFixed(1)}`);
console.table(rows);
if (rows.some((row) => row['within 10 s'] === 'NO')) process.exitCode = 1;
