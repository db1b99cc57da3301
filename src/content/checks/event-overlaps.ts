import type { FishingEvent } from '../../domain/session.ts';
import type { Content } from '../content.ts';
import { listed } from '../did-you-mean.ts';
import type { Fault } from '../fault.ts';
import type { PlacedRow } from '../read-rows.ts';
import { faultAt } from '../sources/source.ts';

/** Two matches on one water and day that used the same pegs: a festival may do so, more often one event was logged twice. */
export function checkEventOverlaps({ events, sessions }: Content): readonly Fault[] {
  const matches = Map.groupBy(
    events.filter(({ value }) => value.kind === 'match'),
    ({ value }) => `${value.day} ${value.water}`,
  );
  const pairs = [...matches.values()].filter((rows) => rows.length > 1);
  if (pairs.length === 0) return [];
  const pegsOf = Map.groupBy(sessions, ({ value }) => value.event);
  const pegs = (event: FishingEvent) => new Set(pegsOf.get(event.id)?.map(({ value }) => value.peg));
  return pairs.flatMap((rows) =>
    rows.slice(1).flatMap((row, index) => {
      const own = pegs(row.value);
      const earlier = rows.slice(0, index + 1).find((other) => [...pegs(other.value)].some((peg) => own.has(peg)));
      return earlier === undefined || earlier.value.id === row.value.id
        ? []
        : [overlap(row, earlier, own, pegs(earlier.value))];
    }),
  );
}

function overlap(
  { value, source }: PlacedRow<FishingEvent>,
  earlier: PlacedRow<FishingEvent>,
  own: ReadonlySet<string>,
  theirs: ReadonlySet<string>,
): Fault {
  const shared = [...own].filter((peg) => theirs.has(peg));
  return faultAt(source(), ['event'], {
    rule: 'event-overlap',
    found: `a second match on ${value.water} on ${value.day} that used ${shared.length === 1 ? 'the peg' : 'the pegs'} ${listed(shared, 6)}`,
    expected: `one match on a peg and day; the other is ${earlier.value.id}`,
    mend: 'If it is the same match logged twice, delete one of the two; if both were fished, leave them.',
    severity: 'warning',
  });
}
