import { pegKey } from '../../domain/peg.ts';
import type { Content } from '../content.ts';
import { listed } from '../did-you-mean.ts';
import type { Fault } from '../fault.ts';
import type { Cells, PlacedRow } from '../read-rows.ts';
import { fileStem } from '../venue-files.ts';
import { unknownEventName, unknownPegName } from './session-names.ts';
import { unknownName } from './unknown-name.ts';

/**
 * A row with a fault still says what it names: an event, water or peg that is not there is told in the same run as whatever
 * else is wrong with the row, so that nobody mends a row twice.
 */
export function checkHalfReadNames(content: Content): readonly Fault[] {
  const { halfRead, rounds, known } = content;
  const waters = [...known.waters];
  const unknownWater = unknownName('water-unknown', waters, `one of ${listed(waters)}`, 'Correct the water.');
  const unknownEvent = unknownEventName(known.events.keys());
  const everCarried = numbersEverCarried(content);

  const waterFaults = ({ value: { water }, source }: PlacedRow<Cells>): readonly Fault[] =>
    water === undefined || known.waters.has(water) ? [] : [unknownWater(source(), ['water'], water)];
  const eventFaults = ({ value: { event }, source }: PlacedRow<Cells>): readonly Fault[] =>
    event === undefined || known.mayLackEvents || known.events.has(event)
      ? []
      : [unknownEvent(source(), ['event'], event)];
  const pegFaults = ({ value: { peg }, source }: PlacedRow<Cells>, water: string | undefined): readonly Fault[] =>
    peg === undefined || water === undefined || !known.waters.has(water) || everCarried.has(pegKey(water, peg))
      ? []
      : [unknownPegName(water, known.pegs)(source(), ['peg'], peg)];

  return [
    ...halfRead.events.flatMap(waterFaults),
    ...halfRead.sessions.flatMap((row) => [
      ...eventFaults(row),
      ...pegFaults(row, known.events.get(row.value.event ?? '')),
    ]),
    ...halfRead.soundings.flatMap((row) => pegFaults(row, fileStem(row.source().file))),
    ...rounds.flatMap((round) =>
      round.halfRead.flatMap((row) => [...waterFaults(row), ...pegFaults(row, row.value.water)]),
    ),
  ];
}

/** Numbers of today and of former days: on which of them a row is right, its day would have to tell. */
function numbersEverCarried({ pegs, retired, known }: Content): ReadonlySet<string> {
  const former = [...pegs, ...retired].flatMap(({ value }) =>
    (value.was ?? []).map(({ peg }) => pegKey(value.water, peg)),
  );
  return new Set([...known.pegs, ...former]);
}
