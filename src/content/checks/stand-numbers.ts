import { overlap } from '../../domain/dated.ts';
import { type Peg, pegKey } from '../../domain/peg.ts';
import { type NumberSpell, numbersOf, standId } from '../../domain/stand.ts';
import type { Content } from '../content.ts';
import type { Fault } from '../fault.ts';
import { type FieldPath, faultAt, type Placed, type Source } from '../sources/source.ts';
import { shown } from '../sources/text-place.ts';

/** Every stand has its own id and its numbers in the order of days, on its own water, and no two carry one number on one day. */
export function checkStandNumbers({ pegs, retired }: Content): readonly Fault[] {
  const stands = [...pegs, ...retired];
  return [...stands.flatMap(ownNumbers), ...sharedIds(stands), ...sharedNumbers(stands)];
}

function ownNumbers({ value: peg, source }: Placed<Peg>): readonly Fault[] {
  const faults: Fault[] = [];
  const was = peg.was ?? [];
  was.forEach(({ from, until }, index) => {
    const water = source.writtenAt(['was', index, 'water']);
    if (water !== undefined && water !== peg.water) faults.push(otherWater(source, index, water, peg.water));
    const before = was[index - 1]?.until ?? null;
    const start = from ?? (index === 0 ? peg.since : undefined);
    if (start !== undefined && until < start) {
      faults.push(wrongOrder(source, ['was', index, 'until'], until, `a day not before ${start}, when it began`));
    } else if (before !== null && (from ?? until) <= before) {
      const field = from === undefined ? 'until' : 'from';
      faults.push(
        wrongOrder(
          source,
          ['was', index, field],
          from ?? until,
          `a day after ${before}, when the number before it ended`,
        ),
      );
    }
  });
  const last = was.at(-1);
  if (peg.retired !== undefined && last === undefined) {
    faults.push(
      faultAt(source, ['retired'], {
        rule: 'retired-number',
        found: 'a retired stand that never carried a number',
        expected: 'was with the number it carried and until when',
        mend: 'Add was: [{ peg: "10", until: 2026-01-31 }] with its number and last day.',
      }),
    );
  }
  if (peg.retired !== undefined && last !== undefined && last.until >= peg.retired.from) {
    faults.push(
      wrongOrder(source, ['retired', 'from'], peg.retired.from, `a day after ${last.until}, its last under a number`),
    );
  }
  const moves = peg.moved ?? [];
  moves.forEach(({ on }, index) => {
    const earlier = moves[index - 1]?.on ?? peg.since;
    if (earlier !== undefined && on <= earlier) {
      faults.push(wrongOrder(source, ['moved', index, 'on'], on, `a day after ${earlier}`));
    }
  });
  return faults;
}

function wrongOrder(source: Source, path: FieldPath, day: string, expected: string): Fault {
  return faultAt(source, path, {
    rule: 'day-order',
    found: shown(day),
    expected,
    mend: 'Correct one of the two days; lists go from the oldest to the newest.',
  });
}

function otherWater(source: Source, index: number, written: string, water: string): Fault {
  return faultAt(source, ['was', index, 'water'], {
    rule: 'was-water',
    found: shown(written),
    expected: `${water}, the water of this record: a stand does not change its water`,
    mend: 'Take the entry out; a peg of another water is another stand with its own record.',
  });
}

function sharedIds(stands: readonly Placed<Peg>[]): readonly Fault[] {
  const first = new Map<string, Peg>();
  return stands.flatMap(({ value, source }) => {
    const id = standId(value);
    const other = first.get(id);
    if (other === undefined) {
      first.set(id, value);
      return [];
    }
    // Two records that write no id and bear one number share the id made of it: the number is what is told.
    if (value.id === undefined && other.id === undefined) return [];
    return [
      faultAt(source, ['id'], {
        rule: 'stand-id-duplicate',
        found: `the id ${shown(id)} a second time`,
        expected: `an id of its own; ${other.file} has this one`,
        mend: 'Give the younger of the two stands another id: any word with a hyphen in it that no record has.',
      }),
    ];
  });
}

function sharedNumbers(stands: readonly Placed<Peg>[]): readonly Fault[] {
  const bearers = new Map<string, { readonly stand: Placed<Peg>; readonly spell: NumberSpell }[]>();
  const faults: Fault[] = [];
  for (const stand of stands) {
    for (const spell of numbersOf(stand.value)) {
      const key = pegKey(stand.value.water, spell.peg);
      const others = bearers.get(key) ?? [];
      const other = others.find((entry) => entry.stand !== stand && overlap(entry.spell, spell));
      // Two records of one present number have a fault of their own (peg-duplicate).
      const isToday = other?.spell.until === undefined && spell.until === undefined;
      if (other !== undefined && !(isToday && other.stand.value.peg === stand.value.peg)) {
        faults.push(sharedNumber(stand, spell, other.stand.value, other.spell));
      }
      bearers.set(key, [...others, { stand, spell }]);
    }
  }
  return faults;
}

function sharedNumber({ value, source }: Placed<Peg>, spell: NumberSpell, other: Peg, theirs: NumberSpell): Fault {
  const index = value.was?.findIndex(({ peg, until }) => peg === spell.peg && until === spell.until) ?? -1;
  return faultAt(source, index === -1 ? ['peg'] : ['was', index, 'peg'], {
    rule: 'number-overlap',
    found: `the number ${shown(spell.peg)} ${spellWords(spell)}`,
    expected: `days on which no other post carried it; ${other.file} has it ${spellWords(theirs)}`,
    mend: 'Say in one of the two records when its number began (since, or from in was) or ended (until in was).',
  });
}

function spellWords({ from, until }: NumberSpell): string {
  if (from === undefined && until === undefined) return 'on every day';
  return [from === undefined ? '' : `from ${from}`, until === undefined ? '' : `until ${until}`].join(' ').trim();
}
