import { parseArgs } from 'node:util';
import { demoVenue } from '../demo/demo-venue.ts';
import { makeVenue } from '../demo/make-venue.ts';
import { RECIPES, rateWith } from './cures.ts';
import { type KeptPromise, promisesOf } from './kept-promises.ts';

/**
 * `npm run scores -- [--venues 12] [--first 1]`: what each cure of the ratings does alone, and all together, to what is said of a
 * last year unseen: on the demo venue and on generated ones. Losses, smaller is better: quantile loss of log weights for the quarters
 * of bags, squared error for chances. For generated venues also the standard error of the change, venue by venue.
 */
const { values } = parseArgs({
  options: { venues: { type: 'string', default: '12' }, first: { type: 'string', default: '1' } },
});
const first = Number(values.first);
const groups = [
  { name: 'demo venue', makers: [demoVenue] },
  {
    name: `${values.venues} generated venues`,
    makers: Array.from({ length: Number(values.venues) }, (_, i) => () => makeVenue({ seed: first + i })),
  },
];

for (const { name, makers } of groups) {
  const told = makers.map((make) => {
    const made = make();
    return RECIPES.map(({ cures }) => lossesOf(promisesOf(made, (before) => rateWith(before, cures))));
  });
  if (told.length === 0) continue;
  // A chance that is hardly ever wrong has no change worth a figure.
  const columns = [...told[0]![0]!].flatMap(([of, loss]) => (loss > 0.001 ? [of] : []));
  console.log(`\n${name}, the last year unseen`);
  console.log(`${''.padEnd(14)}${columns.map((column) => column.padStart(18)).join('')}`);
  RECIPES.forEach((recipe, r) => {
    const cells = columns.map((column) => {
      const losses = told.map((venue) => venue[r]!.get(column)!);
      if (r === 0) return mean(losses).toFixed(4);
      const changes = told.map((venue) => 100 * (venue[r]!.get(column)! / venue[0]!.get(column)! - 1));
      const error = changes.length < 2 ? '' : `±${standardError(changes).toFixed(1)}`;
      return `${mean(changes) >= 0 ? '+' : ''}${mean(changes).toFixed(1)}${error}%`;
    });
    console.log(`${recipe.name.padEnd(14)}${cells.map((cell) => cell.padStart(18)).join('')}`);
  });
}

/** Mean loss of each kind of promise, of bags that were weighed; chances to frame are of all. */
function lossesOf(promises: readonly KeptPromise[]): ReadonlyMap<string, number> {
  return new Map(
    [
      ...Map.groupBy(
        promises.filter(({ of, isWeighed }) => isWeighed || of === 'frame'),
        ({ of }) => of,
      ),
    ].map(([of, each]) => [of, mean(each.map(({ loss }) => loss))]),
  );
}

function mean(numbers: readonly number[]): number {
  return numbers.reduce((sum, value) => sum + value, 0) / numbers.length;
}

function standardError(numbers: readonly number[]): number {
  const middle = mean(numbers);
  const squares = numbers.reduce((sum, value) => sum + (value - middle) ** 2, 0);
  return Math.sqrt(squares / (numbers.length - 1) / numbers.length);
}
