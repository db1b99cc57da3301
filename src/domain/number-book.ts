import { holdsOn } from './dated.ts';
import type { Day } from './day.ts';
import { type Peg, pegKey } from './peg.ts';
import { type NumberSpell, numbersOf } from './stand.ts';

/** A stand with the days on which it carried a number. */
export interface Bearer {
  readonly stand: Peg;
  readonly spell: NumberSpell;
}

/** The stand that carried a number on a day, or who carried it before and after. */
export type NumberOnDay =
  | { readonly ok: true; readonly stand: Peg }
  | { readonly ok: false; readonly before?: Bearer; readonly after?: Bearer };

/** Who carried which number when. */
export interface NumberBook {
  /** The stand with this number on its post on that day. Both `before` and `after` are left out where nobody ever had it. */
  readonly standOn: (water: string, number: string, day: Day) => NumberOnDay;
  /** Everyone who ever carried a number, in the order of days. */
  readonly bearersOf: (water: string, number: string) => readonly Bearer[];
}

/**
 * The one place that turns (water, number, day) into a stand. Where two stands carry a number on one day, which `check`
 * refuses, the first in the order of days is taken.
 * @param stands those of the guide and those that are retired
 */
export function numberBook(stands: readonly Peg[]): NumberBook {
  const bearers = new Map<string, Bearer[]>();
  for (const stand of stands) {
    for (const spell of numbersOf(stand)) {
      const key = pegKey(stand.water, spell.peg);
      const others = bearers.get(key);
      if (others === undefined) bearers.set(key, [{ stand, spell }]);
      else others.push({ stand, spell });
    }
  }
  for (const list of bearers.values()) list.sort((a, b) => compare(a.spell.from ?? '', b.spell.from ?? ''));
  const bearersOf = (water: string, number: string) => bearers.get(pegKey(water, number)) ?? [];
  return {
    bearersOf,
    standOn: (water, number, day) => {
      const all = bearersOf(water, number);
      const bearer = all.find(({ spell }) => holdsOn(spell, day));
      if (bearer !== undefined) return { ok: true, stand: bearer.stand };
      const before = all.findLast(({ spell }) => spell.until !== undefined && spell.until < day);
      const after = all.find(({ spell }) => spell.from !== undefined && day < spell.from);
      return { ok: false, ...(before === undefined ? {} : { before }), ...(after === undefined ? {} : { after }) };
    },
  };
}

function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
