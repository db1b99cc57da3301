import type { DayPeg, MatchDayData } from '../../atlas/match-day-page.ts';
import { type Entry, entriesOf, holdersOf } from '../../match-day/entries.ts';
import { agreedValue, mergedNotes, type Note, type Standing, standingNotes } from '../../match-day/match-log.ts';
import { ABOUT, movedPeg, type OnScales, onScales } from '../../match-day/scales.ts';
import type { MatchStore, Said } from './match-store.ts';

/** The match day as the page shows it: what is noted, and how to note more. Views are drawn anew after every note. */
export class MatchDay {
  readonly data: MatchDayData;
  readonly #store: MatchStore;
  readonly #changed: () => void;
  readonly #typed: Map<string, string>;
  #trouble = '';
  #writing: Promise<void> = Promise.resolve();
  #notes!: readonly Note[];
  #standing!: Standing;
  #entries!: readonly Entry[];
  #holders!: ReadonlyMap<string, readonly Entry[]>;

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
    this.#take(kept.notes);
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

  /** The name of somebody who entered, also of one who withdrew. */
  nameOfEntry(id: string): string {
    const names = this.#notes.flatMap(({ about, value }) =>
      about === ABOUT.entry(id) ? ((value as { readonly name?: string } | null)?.name ?? []) : [],
    );
    return names.findLast((name) => name !== '') ?? 'somebody entered on another phone';
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
  get entries(): readonly Entry[] {
    return this.#entries;
  }

  /** Who else sits on the peg of an entry: phones that gave it away twice. */
  alsoOn({ id, peg }: Entry): readonly Entry[] {
    return peg === null ? [] : (this.#holders.get(peg) ?? []).filter((other) => other.id !== id);
  }

  /** Who sits on a peg, as far as this phone knows names. */
  holderOf(key: string): string {
    return (this.#holders.get(key) ?? [])
      .map(({ name }) => name)
      .filter((name) => name !== '')
      .join(' and ');
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
    this.#take(await this.#store.notes());
    this.#changed();
  }

  #take(notes: readonly Note[]): void {
    this.#notes = notes;
    this.#standing = standingNotes(notes);
    this.#entries = entriesOf(this.#standing);
    this.#holders = holdersOf(this.#entries);
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
