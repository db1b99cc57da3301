import { appendFile, mkdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { HOURS_MATCHES, hoursCoverage } from './hours-coverage.ts';
import { KINDS, type Kind } from './kinds.ts';
import { summary } from './summary.ts';
import { type ToldVenue, toldVenue } from './told-venue.ts';

/**
 * `npm run coverage -- [--kind WORD] [--venues 24] [--seconds 400] [--fresh] [--json]`: simulates venues of every kind and says
 * how many truths the published 80% intervals hold; `--kind hours` those of "when the fish came". What was worked out is kept, so that a run cut short goes on where it ended.
 */
const { values } = parseArgs({
  options: {
    kind: { type: 'string' },
    venues: { type: 'string', default: '24' },
    seconds: { type: 'string', default: '400' },
    fresh: { type: 'boolean', default: false },
    json: { type: 'boolean', default: false },
  },
});
const folder = join(import.meta.dirname, '..', '..', 'node_modules', '.cache', 'peg-atlas-coverage');
const until = Date.now() + 1000 * Number(values.seconds);
const kinds = KINDS.filter(({ name }) => values.kind === undefined || name.includes(values.kind));
const hoursKinds = HOURS_MATCHES.map((matches) => ({ name: `hours of ${matches} matches`, matches })).filter(
  ({ name }) => values.kind === undefined || name.includes(values.kind),
);
if (kinds.length === 0 && hoursKinds.length === 0) {
  console.error(`No kind has "${values.kind}" in its name. Kinds: ${KINDS.map(({ name }) => name).join('; ')}; hours.`);
  process.exit(2);
}
await mkdir(folder, { recursive: true });
/** A water's hours cost little: many, so that the figure stands. */
const HOURS_WATERS = 1000;
for (const { name, matches } of hoursKinds) {
  const { share, error, leans } = hoursCoverage(matches, HOURS_WATERS);
  const largest = Math.max(...leans.map(Math.abs));
  if (values.json)
    console.log(JSON.stringify({ kind: name, waters: HOURS_WATERS, share, error, largestLean: largest }));
  else
    console.log(
      `${name.padEnd(24)} ${HOURS_WATERS} waters   all ${(100 * share).toFixed(1)}±${(100 * error).toFixed(1)}   largest lean of a share ${largest.toFixed(4)}`,
    );
}
let isCutShort = false;
for (const kind of kinds) {
  const told = await venuesOf(kind, Number(values.venues));
  if (values.json) console.log(JSON.stringify({ kind: kind.name, venues: told.length, ...summary(told) }));
  else console.log(summaryText(kind.name, told));
}
if (isCutShort) console.log('Cut short by --seconds: run again to go on.');

async function venuesOf(kind: Kind, count: number): Promise<ToldVenue[]> {
  const file = join(folder, `${kind.name.replaceAll(/[^a-z0-9]+/g, '-')}.jsonl`);
  const kept = values.fresh ? [] : await readKept(file);
  const told: ToldVenue[] = [];
  for (let seed = 1; seed <= count; seed++) {
    const known = kept.find((venue) => venue.seed === seed);
    if (known !== undefined) {
      told.push(known);
      continue;
    }
    if (Date.now() > until) {
      isCutShort = true;
      break;
    }
    const venue = toldVenue(kind, seed);
    told.push(venue);
    await appendFile(file, `${JSON.stringify(venue)}\n`);
  }
  return told;
}

/** The last of each seed counts, so that `--fresh` replaces. */
async function readKept(file: string): Promise<ToldVenue[]> {
  const text = await readFile(file, 'utf8').catch(() => '');
  const venues = text
    .split('\n')
    .filter((line) => line !== '')
    .map((line) => JSON.parse(line) as ToldVenue);
  return [...new Map(venues.map((venue) => [venue.seed, venue])).values()];
}

function summaryText(name: string, told: readonly ToldVenue[]): string {
  if (told.length === 0) return `${name}: nothing yet`;
  const { all, par, features, pegs, evidence, besides, months, sds, dnw } = summary(told);
  const share = ({ share: value, error }: { share: number; error: number }) =>
    `${(100 * value).toFixed(1)}±${(100 * error).toFixed(1)}`;
  return [
    `${name.padEnd(24)} ${told.length} venues   all ${share(all.coverage)}   features ${share(features.coverage)}   pegs ${share(pegs.coverage)}   par of today ${par.rows === 0 ? 'not told' : share(par.coverage)}   slope ${all.slope.share.toFixed(3)}±${all.slope.error.toFixed(3)}   error features ${features.rms.toFixed(4)} pegs ${pegs.rms.toFixed(4)}`,
    `  by evidence   ${evidence.map((e) => `${e.word} ${share(e.coverage)} (${e.rows})`).join('   ')}`,
    `  by month      ${months.map((m) => (100 * m.coverage.share).toFixed(0)).join(' ')}`,
    `  sd found/true ${sds.map(({ term, found, truth }) => `${term} ${found.toFixed(3)}/${truth.toFixed(3)}`).join('   ')}`,
    ...(besides.every(({ tested }) => tested === 0)
      ? []
      : [
          `  beside        ${besides.map(({ name, coverage, earned, tested }) => `${name} ${share(coverage)}, earned its place in ${earned} of ${tested}`).join('   ')}`,
        ]),
    ...(dnw === null ? [] : [`  DNW           ${dnw}`]),
  ].join('\n');
}
