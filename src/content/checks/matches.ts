import type { FishingEvent } from '../../domain/session.ts';
import type { Content } from '../content.ts';
import type { Fault } from '../fault.ts';
import type { PlacedRow } from '../read-rows.ts';
import { faultAt } from '../sources/source.ts';
import { shown } from '../sources/text-place.ts';

/** The events of one match are matches of one day with one frame, each on its own water. */
export function checkMatches({ events }: Content): readonly Fault[] {
  const first = new Map<string, PlacedRow<FishingEvent>>();
  const waters = new Map<string, PlacedRow<FishingEvent>>();
  const names = new Map(events.map((row) => [row.value.id, row]));
  return events.flatMap((row) => {
    const { match, water, kind, id } = row.value;
    if (match === undefined) return [];
    const at = (field: string, found: string, expected: string, other: PlacedRow<FishingEvent>) =>
      faultAt(row.source(), [field], {
        rule: 'match',
        found,
        expected: `${expected} (${other.source().file}, line ${other.line})`,
        mend: 'Correct one of the two rows, or give this event another match, or none.',
      });
    const named = names.get(match);
    if (named !== undefined && named.value.match !== match && match !== id) {
      return [at('match', `the match ${shown(match)}`, 'a name that no other event has by itself', named)];
    }
    const leader = first.get(match);
    const faults: Fault[] = [];
    if (kind !== 'match') faults.push(at('kind', kind, 'match, for an event of a match', row));
    if (leader === undefined) first.set(match, row);
    else {
      for (const [field, key] of [
        ['date', 'day'],
        ['frame_places', 'framePlaces'],
        ['listing', 'listing'],
      ] as const) {
        const mine = String(row.value[key]);
        const theirs = String(leader.value[key]);
        if (mine !== theirs) faults.push(at(field, mine, `${theirs}, as in the first event of this match`, leader));
      }
    }
    const sameWater = waters.get(`${match}\n${water}`);
    if (sameWater === undefined) waters.set(`${match}\n${water}`, row);
    else faults.push(at('water', water, 'each water once in a match', sameWater));
    return faults;
  });
}
