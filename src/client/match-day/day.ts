import type { DayPeg, MatchDayData } from '../../atlas/match-day-page.ts';
import { agreedValue, mergedNotes, type Note, type Standing, standingNotes } from '../../match-day/match-log.ts';
import { ABOUT, movedPeg, type OnScales, onScales } from '../../match-day/scales.ts';
import type { MatchStore, Said } from './match-store.ts';

/** A person who entered, as this phone knows them. */
export interface DayEntry {
  readonly id: string;
  readonly name: string;
  readonly peg: string | null;
  /** Pegs that phones give them, where they differ. */
  readonly differs: readonly string[];
}

/** The match day as the page shows it: what is noted, and how to note more. Views are drawn anew after every note. */
export class MatchDay {
  readonly data: MatchDayData;
  readonly #store: MatchStore;
  readonly #changed: () => void;
  readonly #typed: Map<string, string>;
  #trouble = '';
  #writing: Promise<void> = Promise.resolve();
  #notes: readonly Note[];
  #standing: Standing;

  constructor(
    data: MatchDayData,
    store: MatchStore,
    kept: { readonly notes: readonly Note[]; readonly typed: ReadonlyMap<string, string> },
    changed: () => void,
  ) {
    this.data = data;
    this.#store = store;
    this.#changed = changed;
    this.#typed = new Map(kept.typed);
    this.#notes = kept.notes;
    this.#standing = standingNotes(kept.notes);
  }

  get notes(): readonly Note[] {
    return this.#notes;
  }

  get standing(): Standing {
    return this.#standing;
  }

  get phone(): string {
    return this.#store.phone;
  }

  /** Why the last thing typed or noted is not on the disk; empty where all is. */
  get trouble(): string {
    return this.#trouble;
  }

  /** All pegs of the plan. */
  get pegs(): readonly DayPeg[] {
    return this.data.sections.flatMap(({ pegs }) => pegs);
  }

  /** The name of a peg as people say it. */
  nameOf(key: string): string {
    return this.#pegOf(key)?.name ?? key;
  }

  /** Within what limits the angler of a place sits: those of the peg they were moved to. */
  limitsOf(key: string): string {
    return this.#pegOf(this.movedTo(key) ?? key)?.limits ?? '';
  }

  #pegOf(key: string): DayPeg | undefined {
    return [...this.pegs, ...this.data.spare].find((peg) => peg.key === key);
  }

  /** What the scales say of a peg; null where nothing stands or phones differ. */
  scalesOf(key: string): OnScales | null {
    return onScales(agreedValue(this.#standing, ABOUT.scales(key)));
  }

  /** The peg a place of the plan was moved to. */
  movedTo(key: string): string | null {
    return movedPeg(agreedValue(this.#standing, ABOUT.moved(key)))?.to ?? null;
  }

  /** Who entered and has not withdrawn, in the order of entering. */
  get entries(): readonly DayEntry[] {
    return [...this.#standing].flatMap(([about, [note]]) => {
      if (!about.startsWith('entry ') || note?.value == null) return [];
      const id = about.slice('entry '.length);
      const { name } = note.value as { readonly name?: unknown };
      const pegs = (this.#standing.get(ABOUT.holds(id)) ?? []).flatMap(({ value }) =>
        typeof value === 'string' ? value : [],
      );
      return [
        {
          id,
          name: typeof name === 'string' ? name : '',
          peg: pegs.length === 1 ? pegs[0]! : null,
          differs: pegs.length > 1 ? pegs : [],
        },
      ];
    });
  }

  /** Who sits on a peg, as far as this phone knows names. */
  holderOf(key: string): string {
    return this.entries.find(({ peg }) => peg === key)?.name ?? '';
  }

  /** Notes something, on the disk before it is shown. */
  note(about: string, value: unknown, fields: readonly string[] = []): Promise<void> {
    return this.noteAll([[about, value]], fields);
  }

  /** Notes several things, all or none. @param fields where they were typed: what stands there is noted now */
  async noteAll(said: readonly Said[], fields: readonly string[] = []): Promise<void> {
    await this.#keep(() => this.#store.note(said, new Date().toISOString(), fields));
    if (this.#trouble === '') for (const field of fields) this.#typed.delete(field);
    await this.reload();
  }

  /** What stands in a field and is not noted yet, also from before a restart. */
  typedIn(field: string): string | undefined {
    return this.#typed.get(field);
  }

  /** Keeps what stands in a field, with every key. */
  type(field: string, text: string): Promise<void> {
    this.#typed.set(field, text);
    return this.#keep(() => this.#store.type(field, text));
  }

  /** Takes the notes of another phone. */
  async take(notes: readonly Note[]): Promise<ReturnType<typeof mergedNotes>> {
    const merged = mergedNotes(this.#notes, notes);
    const known = new Set(this.#notes.map(({ id }) => id));
    // A phone without names hands over entries with none: they must not take the place of the names kept here.
    await this.#keep(() => this.#store.take(merged.notes.filter(({ id }) => !known.has(id))));
    await this.reload();
    return { ...merged, edited: merged.edited.filter(({ about }) => !about.startsWith('entry ')) };
  }

  /** Reads what is noted again, also by this page in another tab. */
  async reload(): Promise<void> {
    this.#notes = await this.#store.notes();
    this.#standing = standingNotes(this.#notes);
    this.#changed();
  }

  /** Resolves when all that was typed and noted so far is on the disk, or could not be kept. */
  settled(): Promise<void> {
    return this.#writing;
  }

  #keep(write: () => Promise<void>): Promise<void> {
    this.#writing = this.#tryToKeep(write);
    return this.#writing;
  }

  async #tryToKeep(write: () => Promise<void>): Promise<void> {
    try {
      await write();
      this.#trouble = '';
    } catch (error) {
      this.#trouble =
        error instanceof DOMException && error.name === 'QuotaExceededError'
          ? 'NOT kept: this phone is full. Make room (old photos, other apps), then do it again; hand over what is kept.'
          : 'NOT kept: the phone did not let it be saved. Write it down, load this page again and look what is there.';
      this.#changed();
    }
  }
}
