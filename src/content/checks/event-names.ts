import type { Content } from '../content.ts';
import { listed } from '../did-you-mean.ts';
import type { Fault } from '../fault.ts';
import { faultAt } from '../sources/source.ts';
import { shown } from '../sources/text-place.ts';
import { unknownName } from './unknown-name.ts';

/** Each event has a name of its own, stands on a water that exists, in the folder of its year. */
export function checkEventNames({ events, known }: Content): readonly Fault[] {
  const names = [...known.waters];
  const unknownWater = unknownName('water-unknown', names, `one of ${listed(names)}`, 'Correct the water.');
  const first = new Map<string, { readonly file: string; readonly line: number }>();
  return events.flatMap(({ value: event, line, source }) => {
    const faults: Fault[] = [];
    if (!known.waters.has(event.water)) faults.push(unknownWater(source(), ['water'], event.water));
    const other = first.get(event.id);
    if (other === undefined) first.set(event.id, { file: source().file, line });
    else {
      faults.push(
        faultAt(source(), ['event'], {
          rule: 'event-duplicate',
          found: `the event ${shown(event.id)} a second time`,
          expected: `each event once; the first is in ${other.file}, line ${other.line}`,
          mend: 'Delete one of the two rows, or give this one its own name.',
        }),
      );
    }
    const year = source().file.split('/')[1];
    if (year !== event.day.slice(0, 4)) {
      faults.push(
        faultAt(source(), ['date'], {
          rule: 'event-year',
          found: shown(event.day),
          expected: `a day of ${year}, the year of the folder`,
          mend: 'Correct the date, or move the row to the folder of its year.',
        }),
      );
    }
    return faults;
  });
}
