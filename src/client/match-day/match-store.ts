import { type DBSchema, type IDBPDatabase, openDB } from 'idb';
import { type Note, noteOf } from '../../match-day/match-log.ts';

interface Schema extends DBSchema {
  notes: { key: [string, string]; value: Note & { readonly match: string }; indexes: { match: string } };
  phones: { key: string; value: { readonly match: string; readonly phone: string } };
}

/** A phone has a reference of its own in each match, so that its notes can be told from those of another. */
const ALPHABET = '0123456789abcdefghjkmnpqrstvwxyz';
const REFERENCE_LENGTH = 6;

/**
 * What was noted of matches on this phone, in IndexedDB. Every note is written by itself and at once; the promise is kept
 * when the browser says that it is on the disk, so a reload, a crash or an empty battery costs at most what was being typed.
 */
export class MatchStore {
  readonly #database: IDBPDatabase<Schema>;
  readonly #match: string;
  readonly phone: string;

  private constructor(database: IDBPDatabase<Schema>, match: string, phone: string) {
    this.#database = database;
    this.#match = match;
    this.phone = phone;
  }

  /** Opens the notes of one match. @param guide where the guide stands, since one origin may serve several */
  static async open(guide: string, match: string): Promise<MatchStore> {
    const database = await openDB<Schema>(`peg-atlas-matches ${guide}`, 1, {
      upgrade: (fresh) => {
        fresh.createObjectStore('notes', { keyPath: ['match', 'id'] }).createIndex('match', 'match');
        fresh.createObjectStore('phones', { keyPath: 'match' });
      },
      blocking: (_current, _wanted, event) => (event.target as IDBDatabase).close(),
    });
    const transaction = database.transaction('phones', 'readwrite', { durability: 'strict' });
    const phone = (await transaction.store.get(match))?.phone ?? newReference();
    await transaction.store.put({ match, phone });
    await transaction.done;
    return new MatchStore(database, match, phone);
  }

  /** Everything noted of the match, on this phone and taken from others. */
  async notes(): Promise<readonly Note[]> {
    const rows = await this.#database.getAllFromIndex('notes', 'match', this.#match);
    return rows.map(({ match: _, ...note }) => note);
  }

  /** Notes something in place of what stands of it. Reading and writing are one step, also where the page is open twice. */
  async note(about: string, value: unknown, at: string): Promise<void> {
    const transaction = this.#database.transaction('notes', 'readwrite', { durability: 'strict' });
    const rows = await transaction.store.index('match').getAll(this.#match);
    const notes = rows.map(({ match: _, ...note }) => note);
    await transaction.store.add({ match: this.#match, ...noteOf(notes, this.phone, about, value, at) });
    await transaction.done;
  }

  /** Takes notes of another phone, all or none. */
  async take(notes: readonly Note[]): Promise<void> {
    const transaction = this.#database.transaction('notes', 'readwrite', { durability: 'strict' });
    for (const note of notes) await transaction.store.put({ match: this.#match, ...note });
    await transaction.done;
  }

  close(): void {
    this.#database.close();
  }
}

function newReference(): string {
  return [...crypto.getRandomValues(new Uint8Array(REFERENCE_LENGTH))].map((byte) => ALPHABET[byte % 32]).join('');
}
