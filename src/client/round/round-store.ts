import { type DBSchema, type IDBPDatabase, type IDBPTransaction, openDB } from 'idb';
import type { GaugeDraft, PegDraft, PhotoDraft, Round, WholeRound } from './draft.ts';
import { applyPatch, type DraftPatch } from './draft-patch.ts';

interface Schema extends DBSchema {
  rounds: { key: string; value: Round };
  pegs: { key: [string, string, string]; value: PegDraft; indexes: { ref: string } };
  gauges: { key: [string, string]; value: GaugeDraft; indexes: { ref: string } };
  photos: { key: [string, string]; value: PhotoDraft; indexes: { ref: string } };
}

const NAME = 'peg-atlas-rounds';
const PARTS = ['pegs', 'gauges', 'photos'] as const;

type Name = 'rounds' | (typeof PARTS)[number];
type Transaction = IDBPTransaction<Schema, Name[], 'readwrite'>;

/** The phone has no room for more. */
export class StorageFull extends Error {}

/** The round is no longer on this phone: the browser, or a person, has cleared it. */
export class RoundGone extends Error {}

/** The round was handed over, in another window, and is not changed any more. */
export class RoundHandedOver extends Error {}

/**
 * The bank rounds on this phone, in IndexedDB. Every change is written at once and by itself, so that a reload, a crash or
 * a full phone costs at most the change it interrupts.
 */
export class RoundStore {
  readonly #database: IDBPDatabase<Schema>;

  constructor(database: IDBPDatabase<Schema>) {
    this.#database = database;
  }

  /** All rounds, the latest day first. */
  async rounds(): Promise<Round[]> {
    return (await this.#database.getAll('rounds')).sort(
      (a, b) => b.day.localeCompare(a.day) || b.ref.localeCompare(a.ref),
    );
  }

  /** The round of this venue that is being walked: the latest that is not handed over. */
  async openRound(venue: string): Promise<Round | undefined> {
    return (await this.rounds()).find((round) => round.venue.id === venue && round.handedOver === undefined);
  }

  /**
   * Begins a round, unless one of its venue is being walked already, in another tab: then that is the round.
   * @throws StorageFull where there is no room; so do the other methods that write
   */
  async beginRound(fresh: Round): Promise<Round> {
    return this.#change(['rounds'], async (transaction) => {
      const rounds = await transaction.objectStore('rounds').getAll();
      const open = rounds.find(({ venue, handedOver }) => venue.id === fresh.venue.id && handedOver === undefined);
      if (open === undefined) await transaction.objectStore('rounds').put(fresh);
      return open ?? fresh;
    });
  }

  /**
   * Changes a round that is on this phone.
   * @throws RoundGone where it is not
   */
  changeRound(ref: string, change: (round: Round) => Round): Promise<Round> {
    return this.#change(['rounds'], async (transaction) => {
      const round = await transaction.objectStore('rounds').get(ref);
      if (round === undefined) throw new RoundGone();
      const changed = change(round);
      await transaction.objectStore('rounds').put(changed);
      return changed;
    });
  }

  /**
   * Changes what a patch names of a draft, as it is now on this phone: what another tab noted meanwhile stays.
   * @param empty the draft where nothing is noted yet
   * @throws RoundGone, RoundHandedOver; so do the other methods that write into a round
   */
  patchPeg(empty: PegDraft, patch: DraftPatch): Promise<PegDraft> {
    return this.#change(['rounds', 'pegs'], async (transaction) => {
      await this.#openRound(transaction, empty.ref);
      const pegs = transaction.objectStore('pegs');
      const draft = applyPatch((await pegs.get([empty.ref, empty.water, empty.peg])) ?? empty, patch);
      await pegs.put(draft);
      return draft;
    });
  }

  async saveGauge(draft: GaugeDraft): Promise<void> {
    await this.#change(['rounds', 'gauges'], async (transaction) => {
      await this.#openRound(transaction, draft.ref);
      await transaction.objectStore('gauges').put(draft);
    });
  }

  async savePhoto(photo: PhotoDraft): Promise<void> {
    await this.#change(['rounds', 'photos'], async (transaction) => {
      await this.#openRound(transaction, photo.ref);
      await transaction.objectStore('photos').put(photo);
    });
  }

  async removePhoto(ref: string, id: string): Promise<void> {
    await this.#database.delete('photos', [ref, id]);
  }

  /** A round with everything noted on it; undefined where it is not on this phone. */
  async whole(ref: string): Promise<WholeRound | undefined> {
    const transaction = this.#database.transaction(['rounds', ...PARTS], 'readonly');
    const [round, pegs, gauges, photos] = await Promise.all([
      transaction.objectStore('rounds').get(ref),
      transaction.objectStore('pegs').index('ref').getAll(ref),
      transaction.objectStore('gauges').index('ref').getAll(ref),
      transaction.objectStore('photos').index('ref').getAll(ref),
    ]);
    await transaction.done;
    return round === undefined ? undefined : { round, pegs, gauges, photos };
  }

  /** Puts a whole round into the place of one with the same reference, all or nothing. */
  async saveWhole({ round, pegs, gauges, photos }: WholeRound): Promise<void> {
    const transaction = this.#database.transaction(['rounds', ...PARTS], 'readwrite', { durability: 'strict' });
    const requests: Promise<unknown>[] = [];
    /** Noted as handled at once: where a later request fails, this one's failure is the same. */
    const run = (request: Promise<unknown>): void => {
      request.catch(() => undefined);
      requests.push(request);
    };
    try {
      for (const part of PARTS) {
        const keys = await transaction.objectStore(part).index('ref').getAllKeys(round.ref);
        for (const key of keys) run(transaction.objectStore(part).delete(key as never));
      }
      run(transaction.objectStore('rounds').put(round));
      for (const draft of pegs) run(transaction.objectStore('pegs').put(draft));
      for (const draft of gauges) run(transaction.objectStore('gauges').put(draft));
      for (const photo of photos) run(transaction.objectStore('photos').put(photo));
      await Promise.all([...requests, transaction.done]);
    } catch (error) {
      throw await undone(transaction, error);
    }
  }

  /** Deletes a round and everything noted on it. */
  async removeRound(ref: string): Promise<void> {
    const transaction = this.#database.transaction(['rounds', ...PARTS], 'readwrite');
    const requests: Promise<void>[] = [transaction.objectStore('rounds').delete(ref)];
    for (const part of PARTS) {
      const keys = await transaction.objectStore(part).index('ref').getAllKeys(ref);
      requests.push(...keys.map((key) => transaction.objectStore(part).delete(key as never)));
    }
    await Promise.all([...requests, transaction.done]);
  }

  close(): void {
    this.#database.close();
  }

  async #openRound(transaction: Transaction, ref: string): Promise<void> {
    const round = await transaction.objectStore('rounds').get(ref);
    if (round === undefined) throw new RoundGone();
    if (round.handedOver !== undefined) throw new RoundHandedOver();
  }

  /** `strict` asks the browser to have it on the disk before it says so: the battery may go at any moment. */
  async #change<T>(names: readonly Name[], change: (transaction: Transaction) => Promise<T>): Promise<T> {
    const transaction = this.#database.transaction([...names], 'readwrite', { durability: 'strict' }) as Transaction;
    // Where a request fails its failure is told below, once.
    transaction.done.catch(() => undefined);
    try {
      const result = await change(transaction);
      await transaction.done;
      return result;
    } catch (error) {
      throw await undone(transaction, error);
    }
  }
}

/** Takes back what a failed transaction has done so far, and names the failure. */
async function undone(transaction: { abort(): void; done: Promise<void> }, error: unknown): Promise<unknown> {
  try {
    transaction.abort();
  } catch {
    // The browser has ended it already.
  }
  await transaction.done.catch(() => undefined);
  return error instanceof DOMException && error.name === 'QuotaExceededError' ? new StorageFull() : error;
}

/**
 * Opens the rounds of one guide on this phone, and makes room for them the first time. Guides of one host keep apart by
 * the path they stand below; the rounds of a guide that were kept when all shared one place come over once.
 * @param base the guide's path, with a slash at each end
 * @param venue the id of its venue, by which its rounds are known among others
 */
export async function openRoundStore(base: string, venue: string): Promise<RoundStore> {
  const store = new RoundStore(await opened(nameOf(base)));
  if (base !== '/') await bringOver(venue, store).catch(() => undefined);
  return store;
}

/** The guide at the root keeps the name that all used to share. */
function nameOf(base: string): string {
  return base === '/' ? NAME : `${NAME} ${base}`;
}

function opened(name: string): Promise<IDBPDatabase<Schema>> {
  return openDB<Schema>(name, 1, {
    upgrade: (fresh) => {
      fresh.createObjectStore('rounds', { keyPath: 'ref' });
      fresh.createObjectStore('pegs', { keyPath: ['ref', 'water', 'peg'] }).createIndex('ref', 'ref');
      fresh.createObjectStore('gauges', { keyPath: ['ref', 'water'] }).createIndex('ref', 'ref');
      fresh.createObjectStore('photos', { keyPath: ['ref', 'id'] }).createIndex('ref', 'ref');
    },
    // An older page of the guide in another tab must not keep a newer one waiting.
    blocking: (_current, _wanted, event) => (event.target as IDBDatabase).close(),
  });
}

/** Each round is here before it is taken away there: a phone that goes off in between has it twice, and never not at all. */
async function bringOver(venue: string, store: RoundStore): Promise<void> {
  const shared = new RoundStore(await opened(NAME));
  try {
    for (const { ref, venue: ofRound } of await shared.rounds()) {
      const whole = ofRound.id === venue ? await shared.whole(ref) : undefined;
      if (whole === undefined) continue;
      // One that is here already was gone on with here.
      if ((await store.whole(ref)) === undefined) await store.saveWhole(whole);
      await shared.removeRound(ref);
    }
  } finally {
    shared.close();
  }
}
