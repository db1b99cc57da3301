import type { Session } from '../../domain/session.ts';
import type { Content } from '../content.ts';
import type { Fault } from '../fault.ts';
import type { PlacedRow } from '../read-rows.ts';
import { faultAt } from '../sources/source.ts';
import { shown } from '../sources/text-place.ts';

/**
 * In a match a peg is fished by one angler and an angler fishes one peg; one who did not come may have drawn a peg somebody
 * then took. Where pegs are chosen, a peg may be used twice in a day, so only a row repeated whole is refused.
 */
export function checkSessionDuplicates({ sessions, events }: Content): readonly Fault[] {
  const matches = new Set(events.filter(({ value }) => value.kind === 'match').map(({ value }) => value.id));
  const pegs = new Map<string, PlacedRow<Session>>();
  const anglers = new Map<string, PlacedRow<Session>>();
  const faults: Fault[] = [];
  for (const row of sessions) {
    const { event, peg, angler, status } = row.value;
    if (matches.has(event)) {
      const pegUse = `${event}\n${peg}\n${status === 'absent' ? 'absent' : 'fished'}`;
      const samePeg = seen(pegs, pegUse, row);
      if (samePeg !== null)
        faults.push(doubled(row, samePeg, 'peg', `the peg ${shown(peg)} a second time in ${event}`));
      const sameAngler = angler === undefined ? null : seen(anglers, `${event}\n${angler}`, row);
      // One row entered twice is one fault.
      if (sameAngler !== null && sameAngler !== samePeg) {
        faults.push(doubled(row, sameAngler, 'angler', `the angler ${shown(angler ?? '')} a second time in ${event}`));
      }
    } else {
      const same = seen(pegs, JSON.stringify(row.value), row);
      if (same !== null) faults.push(doubled(row, same, 'peg', 'the same row a second time'));
    }
  }
  return faults;
}

/** The row seen before under a key, which this one takes where there was none. */
function seen(rows: Map<string, PlacedRow<Session>>, key: string, row: PlacedRow<Session>): PlacedRow<Session> | null {
  const before = rows.get(key);
  if (before === undefined) rows.set(key, row);
  return before ?? null;
}

function doubled(row: PlacedRow<Session>, first: PlacedRow<Session>, field: 'peg' | 'angler', found: string): Fault {
  return faultAt(row.source(), [field], {
    rule: 'session-duplicate',
    found,
    expected: `one row for each; the first is in ${first.source().file}, line ${first.line}`,
    mend:
      field === 'peg'
        ? 'Delete one of the two rows, or correct the peg.'
        : 'Delete one of the two rows, or correct the reference.',
  });
}
