import { RATINGS_CASES } from './ratings/all-cases.ts';
import { isWithin } from './ratings/figure.ts';

/** Prints every published figure beside what the statistics engine finds; ends with 1 where one lies outside its tolerance. */
const digits = (value: number) => value.toPrecision(10);
let outside = 0;
for (const reference of RATINGS_CASES) {
  process.stdout.write(`\n${reference.name}\n  ${reference.source}\n`);
  const figures = reference.figures();
  const width = Math.max(...figures.map(({ figure }) => figure.length));
  for (const figure of figures) {
    const allowed = `${figure.isRelative ? 'rel' : 'abs'} ${figure.tolerance.toExponential(0)}`;
    const verdict = isWithin(figure) ? 'agrees' : 'OUTSIDE';
    if (!isWithin(figure)) outside++;
    const cells = [
      digits(figure.expected).padStart(17),
      digits(figure.found).padStart(17),
      allowed.padStart(9),
      verdict,
    ];
    process.stdout.write(`  ${figure.figure.padEnd(width)}  ${cells.join('  ')}\n`);
  }
}
process.stdout.write(outside === 0 ? '\nAll figures agree.\n' : `\n${outside} figures lie outside their tolerance.\n`);
process.exitCode = outside === 0 ? 0 : 1;
