/**
 * What happened on a match day, as a list of things noted that is only ever added to: who noted it, when by that phone's clock,
 * and which earlier notes of the same thing it was made in place of. Two phones' lists are put together by taking every note
 * once, in any order and any number of times. No clock decides: what nothing was noted in place of stands, and where two such
 * notes of one thing differ, a person chooses. (A register of many values: Shapiro and others, Conflict-free replicated data
 * types, 2011.)
 */
export interface Note {
  /** The phone and its count: `k7q2.14`. */
  readonly id: string;
  /** The phone's clock, which may be wrong. */
  readonly at: string;
  /** What it is about: `scales kiln-pool/9`. */
  readonly about: string;
  /** Plain data; null where it was taken back. */
  readonly value: unknown;
  readonly replaces: readonly string[];
}

/** What stands of one thing: more than one note only where phones differ. */
export type Standing = ReadonlyMap<string, readonly Note[]>;

/** The notes that stand, by what they are about. Notes that say the same stand as one. */
export function standingNotes(notes: readonly Note[]): Standing {
  const replaced = new Set(notes.flatMap((note) => note.replaces));
  const heads = Map.groupBy(
    notes.filter(({ id }) => !replaced.has(id)),
    ({ about }) => about,
  );
  return new Map([...heads].map(([about, own]) => [about, different(own)]));
}

/** The value of a thing where all phones agree; undefined where nothing is noted or they do not. */
export function agreedValue(standing: Standing, about: string): unknown {
  const heads = standing.get(about) ?? [];
  return heads.length === 1 ? heads[0]!.value : undefined;
}

/** Things of which phones say different things. */
export function conflictsOf(
  standing: Standing,
): readonly { readonly about: string; readonly notes: readonly Note[] }[] {
  return [...standing].flatMap(([about, notes]) => (notes.length > 1 ? [{ about, notes }] : []));
}

/** A new note, in place of all that stands of the same thing on this phone. */
export function noteOf(notes: readonly Note[], phone: string, about: string, value: unknown, at: string): Note {
  const replaced = new Set(notes.flatMap((note) => note.replaces));
  const heads = notes.filter((note) => note.about === about && !replaced.has(note.id));
  const own = notes.filter(({ id }) => id.startsWith(`${phone}.`)).map(({ id }) => Number(id.slice(phone.length + 1)));
  return { id: `${phone}.${Math.max(0, ...own) + 1}`, at, about, value, replaces: heads.map(({ id }) => id) };
}

/** Two lists as one. A note of the same id that says something else was edited: the first list's stands, and it is told. */
export function mergedNotes(
  own: readonly Note[],
  other: readonly Note[],
): { readonly notes: readonly Note[]; readonly added: number; readonly edited: readonly Note[] } {
  const known = new Map(own.map((note) => [note.id, note]));
  const fresh = [...new Map(other.filter(({ id }) => !known.has(id)).map((note) => [note.id, note])).values()];
  const edited = other.filter(
    (note) => known.has(note.id) && JSON.stringify(known.get(note.id)) !== JSON.stringify(note),
  );
  return { notes: [...own, ...fresh], added: fresh.length, edited };
}

function different(notes: readonly Note[]): readonly Note[] {
  return [...new Map(notes.map((note) => [JSON.stringify(note.value), note])).values()];
}
