import type { DayPeg, MatchDayData } from '../../atlas/match-day-page.ts';
import { agreedValue, mergedNotes, type Note, type Standing, standingNotes } from '../../match-day/match-log.ts';
import { ABOUT, movedPeg, type OnScales, onScales } from '../../match-day/scales.ts';
import type { MatchStore } from './match-store.ts';

/** A person who entered, as this phone knows them. */
export interface DayEntry {
  readonly id: string;
  readonly name: string;
  readonly peg: string | null;
}

/** The match day as the page shows it: what is noted, and how to note more. Views are drawn anew after every note. */
export class MatchDay {
  readonly data: MatchDayData;
  readonly #store: MatchStore;
  readonly #changed: () => void;
  #notes: readonly Note[];
  #standing: Standing;

  constructor(data: MatchDayData, store: MatchStore, notes: readonly Note[], changed: () => void) {
    this.data = data;
    this.#store = store;
    this.#changed = changed;
    this.#notes = notes;
    this.#standing = standingNotes(notes);
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

  /** All pegs of the plan. */
  get pegs(): readonly DayPeg[] {
    return this.data.sections.flatMap(({ pegs }) => pegs);
  }

  /** The name of a peg as people say it. */
  nameOf(key: string): string {
    return [...this.pegs, ...this.data.spare].find((peg) => peg.key === key)?.name ?? key;
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
      const peg = agreedValue(this.#standing, ABOUT.holds(id));
      return [{ id, name: typeof name === 'string' ? name : '', peg: typeof peg === 'string' ? peg : null }];
    });
  }

  /** Who sits on a peg, as far as this phone knows names. */
  holderOf(key: string): string {
    return this.entries.find(({ peg }) => peg === key)?.name ?? '';
  }

  /** Notes something, on the disk before it is shown. */
  async note(about: string, value: unknown): Promise<void> {
    await this.#store.note(about, value, new Date().toISOString());
    await this.reload();
  }

  /** Takes the notes of another phone. */
  async take(notes: readonly Note[]): Promise<ReturnType<typeof mergedNotes>> {
    const merged = mergedNotes(this.#notes, notes);
    const known = new Set(this.#notes.map(({ id }) => id));
    // A phone without names hands over entries with none: they must not take the place of the names kept here.
    await this.#store.take(merged.notes.filter(({ id }) => !known.has(id)));
    await this.reload();
    return { ...merged, edited: merged.edited.filter(({ about }) => !about.startsWith('entry ')) };
  }

  /** Reads what is noted again, also by this page in another tab. */
  async reload(): Promise<void> {
    this.#notes = await this.#store.notes();
    this.#standing = standingNotes(this.#notes);
    this.#changed();
  }
}
