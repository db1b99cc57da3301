import { appendFile, mkdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { makeVenue } from '../demo/make-venue.ts';
import { type KeptPromise, promisesOf } from './kept-promises.ts';

/**
 * `npm run calibration -- [--venues 12] [--seconds 400] [--fresh]`: generated venues, each rated without its last year, and what
 * was promised for that year beside what came: quarters of expected bags, chance of none of a part, chance to frame.
 */
const { values } = parseArgs({
  options: {
    venues: { type: 'string', default: '12' },
    seconds: { type: 'string', default: '400' },
    fresh: { type: 'boolean', default: false },
  },
});
const folder = join(import.meta.dirname, '..', '..', 'node_modules', '.cache', 'peg-atlas-coverage');
const file = join(folder, 'calibration.jsonl');
const until = Date.now() + 1000 * Number(values.seconds);
await mkdir(folder, { recursive: true });
const text = values.fresh ? '' : await readFile(file, 'utf8').catch(() => '');
const kept = new Map(
  text
    .split('\n')
    .filter((line) => line !== '')
    .map((line) => JSON.parse(line) as { seed: number; promises: KeptPromise[] })
    .map(({ seed, promises }) => [seed, promises]),
);
const all: { readonly seed: number; readonly promises: readonly KeptPromise[] }[] = [];
for (let seed = 1; seed <= Number(values.venues); seed++) {
  let promises = kept.get(seed);
  if (promises === undefined) {
    if (Date.now() > until) {
      console.log('Cut short by --seconds: run again to go on.');
      break;
    }
    promises = promisesOf(makeVenue({ seed }));
    await appendFile(file, `${JSON.stringify({ seed, promises })}\n`);
  }
  all.push({ seed, promises });
}
console.log(`${all.length} venues, their last year unseen`);
for (const what of [...new Set(all.flatMap(({ promises }) => promises.map(({ of }) => of)))]) {
  const promises = all.flatMap(({ seed, promises: of }) =>
    of
      .filter((promise) => promise.of === what && promise.isShare)
      .map((promise) => ({ ...promise, event: `${seed} ${promise.event}` })),
  );
  console.log(
    `\n${what}: ${promises.length} promises, stated ${mean(promises.map(({ stated }) => stated))}, happened ${mean(promises.map(({ happened }) => Number(happened)))}`,
  );
  const sorted = [...promises].sort((a, b) => a.stated - b.stated);
  // Quarters are stated at three chances only; others in ten bins of as many promises each.
  const bins = what.startsWith('quarter')
    ? [0.25, 0.5, 0.75].map((stated) => sorted.filter((promise) => promise.stated === stated))
    : Array.from({ length: 10 }, (_, k) =>
        sorted.slice(Math.floor((k * sorted.length) / 10), Math.floor(((k + 1) * sorted.length) / 10)),
      );
  for (const bin of bins) {
    const [stated, happened] = [mean(bin.map((each) => each.stated)), mean(bin.map((each) => Number(each.happened)))];
    console.log(
      `  stated ${stated}   happened ${happened}   ${(Number(happened) - Number(stated)).toFixed(3)} ± ${errorOf(bin).toFixed(3)}   (${bin.length})`,
    );
  }
}

function mean(numbers: readonly number[]): string {
  return (numbers.reduce((sum, value) => sum + value, 0) / Math.max(1, numbers.length)).toFixed(3);
}

/** Standard error of how far a bin's promises miss, the days being what was drawn anew (Cochran, Sampling Techniques, 1977, ch. 9). */
function errorOf(bin: readonly KeptPromise[]): number {
  const middle = bin.reduce((sum, each) => sum + Number(each.happened) - each.stated, 0) / bin.length;
  const days = [...Map.groupBy(bin, ({ event }) => event).values()].map((of) =>
    of.reduce((sum, each) => sum + Number(each.happened) - each.stated - middle, 0),
  );
  const squares = days.reduce((sum, value) => sum + value * value, 0);
  return days.length < 2 ? Number.NaN : Math.sqrt((squares * days.length) / (days.length - 1)) / bin.length;
}
