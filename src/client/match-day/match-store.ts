import { type DBSchema, type IDBPDatabase, openDB } from 'idb';
import { type Note, noteOf } from '../../match-day/match-log.ts';
import { newReference } from '../new-reference.ts';

interface Schema extends DBSchema {
  notes: { key: [string, string]; value: Note & { readonly match: string }; indexes: { match: string } };
  phones: { key: string; value: { readonly match: string; readonly phone: string } };
  typed: { key: [string, string]; value: Typed & { readonly match: string }; indexes: { match: string } };
}

/** What stands in a field and is not noted yet. */
interface Typed {
  readonly field: string;
  readonly text: string;
}

/** Something to note: what it is about, and what is said of it. */
export type Said = readonly [about: string, value: unknown];

/**
 * What was noted of matches on this phone, in IndexedDB. Every note is written by itself and at once; the promise is kept
 * when the browser says that it is on the disk. What stands in a field and is not noted yet is written with every key, so that a
 * reload, a crash or an empty battery costs nothing that was typed.
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
    const database = await openDB<Schema>(`peg-atlas-matches ${guide}`, 2, {
      upgrade: (database, before) => {
        if (before < 1) {
          database.createObjectStore('notes', { keyPath: ['match', 'id'] }).createIndex('match', 'match');
          database.createObjectStore('phones', { keyPath: 'match' });
        }
        database.createObjectStore('typed', { keyPath: ['match', 'field'] }).createIndex('match', 'match');
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
    return rows.map(({ match: _, ...note }) => note).sort(inOrder);
  }

  /**
   * Notes things in place of what stands of them, all or none, and forgets what was typed into the fields they came from.
   * Reading and writing are one step, also where the page is open twice.
   */
  async note(said: readonly Said[], at: string, fields: readonly string[] = []): Promise<void> {
    const transaction = this.#database.transaction(['notes', 'typed'], 'readwrite', { durability: 'strict' });
    const store = transaction.objectStore('notes');
    await whole(transaction, async () => {
      const notes: Note[] = (await store.index('match').getAll(this.#match)).map(({ match: _, ...note }) => note);
      for (const [about, value] of said) {
        const note = noteOf(notes, this.phone, about, value, at);
        notes.push(note);
        await store.add({ match: this.#match, ...note });
      }
      for (const field of fields) await transaction.objectStore('typed').delete([this.#match, field]);
    });
  }

  /** Keeps what stands in a field; an empty text forgets it. */
  async type(field: string, text: string): Promise<void> {
    const transaction = this.#database.transaction('typed', 'readwrite', { durability: 'strict' });
    if (text === '') await transaction.store.delete([this.#match, field]);
    else await transaction.store.put({ match: this.#match, field, text });
    await transaction.done;
  }

  /** What stands in fields and is not noted yet. */
  async typed(): Promise<ReadonlyMap<string, string>> {
    const rows = await this.#database.getAllFromIndex('typed', 'match', this.#match);
    return new Map(rows.map(({ field, text }) => [field, text]));
  }

  /** Takes notes of another phone, all or none. */
  async take(notes: readonly Note[]): Promise<void> {
    const transaction = this.#database.transaction('notes', 'readwrite', { durability: 'strict' });
    await whole(transaction, async () => {
      for (const note of notes) await transaction.store.put({ match: this.#match, ...note });
    });
  }

  close(): void {
    this.#database.close();
  }
}

/** Each phone's notes in the order in which it made them: their references are text, where 10 would come before 2. */
function inOrder(a: Note, b: Note): number {
  const [phone, count] = a.id.split('.');
  const [otherPhone, otherCount] = b.id.split('.');
  return phone === otherPhone ? Number(count) - Number(otherCount) : phone! < otherPhone! ? -1 : 1;
}

/** Does all of something to the disk or nothing of it: what is thrown half-way would otherwise leave the first half. */
async function whole(
  transaction: { readonly done: Promise<void>; abort(): void },
  write: () => Promise<void>,
): Promise<void> {
  try {
    await write();
  } catch (error) {
    // It may have ended by itself: what is thrown is what counts.
    transaction.done.catch(() => {});
    try {
      transaction.abort();
    } catch {}
    throw error;
  }
  await transaction.done;
}
