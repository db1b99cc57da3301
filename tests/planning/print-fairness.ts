import { textTable } from '../../src/commands/text-table.ts';
import { FAIRNESS_KINDS, fairness } from './fairness.ts';

/** `npm run reference:plans [-- VENUES]`: how far true section means lie apart on simulated venues, by how they were cut. */
const venues = Number(process.argv[2] ?? 12);
const rows = Object.keys(FAIRNESS_KINDS).map((kind) => fairness(kind, venues));
const table = textTable([
  ['venues', 'planned', 'random', 'equal cuts', 'planned ÷ random', 'says no difference'],
  ...rows.map(({ kind, planned, random, equalCuts, noDifference }) => [
    kind,
    planned.toFixed(3),
    random.toFixed(3),
    equalCuts.toFixed(3),
    random === 0 ? '' : (planned / random).toFixed(2),
    `${noDifference} of ${venues}`,
  ]),
]);
process.stdout.write(
  `True section means apart, root mean square in multiples of par: 24 entries of 32 pegs in 4 sections.\n${table.join('\n')}\n`,
);
