import { agreedValue, type Standing } from './match-log.ts';
import { ABOUT } from './scales.ts';

/** Somebody who entered, as a phone knows them. */
export interface Entry {
  readonly id: string;
  /** Empty where they were entered on another phone, which handed over no names. */
  readonly name: string;
  readonly peg: string | null;
  /** Pegs that phones give them, where they differ. */
  readonly differs: readonly string[];
}

const ENTRY = ABOUT.entry('');

/** Who entered and has not withdrawn, in the order of entering. */
export function entriesOf(standing: Standing): readonly Entry[] {
  return [...standing].flatMap(([about, [note]]) => {
    if (!about.startsWith(ENTRY) || typeof note?.value !== 'object' || note.value === null) return [];
    const id = about.slice(ENTRY.length);
    const { name } = note.value as { readonly name?: unknown };
    const peg = agreedValue(standing, ABOUT.holds(id));
    const heads = standing.get(ABOUT.holds(id)) ?? [];
    return [
      {
        id,
        name: typeof name === 'string' ? name : '',
        peg: typeof peg === 'string' ? peg : null,
        differs: heads.length > 1 ? heads.flatMap(({ value }) => (typeof value === 'string' ? value : [])) : [],
      },
    ];
  });
}

/** Who sits on each peg: more than one where two phones gave it away. */
export function holdersOf(entries: readonly Entry[]): ReadonlyMap<string, readonly Entry[]> {
  return Map.groupBy(
    entries.filter(({ peg }) => peg !== null),
    ({ peg }) => peg!,
  );
}
