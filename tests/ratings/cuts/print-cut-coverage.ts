import { textTable } from '../../../src/commands/text-table.ts';
import { cutCoverage } from './cut-coverage.ts';
import { SIMULATIONS } from './simulated-banks.ts';

const YEARS = [2.75, 6, 12];
// How many venues a case, the part of a name, and the first seed: other seeds must tell the same.
const firstSeed = Number(process.argv[4] ?? 1);
const seeds = Array.from({ length: Number(process.argv[2] ?? 40) }, (_, index) => firstSeed + index);
const percent = (share: number) => `${(100 * share).toFixed(1)}%`;
const part = process.argv[3] ?? '';
const named = Object.entries(SIMULATIONS).filter(([name]) => name.includes(part));
const rows = named.flatMap(([name, simulate]) =>
  YEARS.map((years) => {
    const found = cutCoverage(seeds.map((seed) => simulate(years, seed)));
    return [
      `${name}, ${years} years`,
      String(found.forecasts),
      percent(found.inside),
      percent(found.before),
      percent(found.after),
      percent(found.beforeMiddle),
      found.widthDays.toFixed(0),
    ];
  }),
);
const heads = ['', 'forecasts', 'in 80%', 'before', 'after', 'before middle', 'days wide'];
process.stdout.write(`${textTable([heads, ...rows]).join('\n')}\n`);
