import { type NowFile, type SeenNows, seeNow } from '../../domain/now-file.ts';
import { shortDigest } from './digest.ts';
import { type OfflineList, parsedJson, readOfflineList } from './offline-list.ts';
import type { Store } from './surroundings.ts';

/** `whole` is the guide that is kept, `before` the one before it, for pages still open, `latest` the one being taken up. */
export type ListName = 'whole' | 'before' | 'latest';

/** When the host last told which edition is published. */
export interface LastCheck {
  readonly edition: string;
  /** Milliseconds since 1970. */
  readonly time: number;
}

const SEEN = 'seen/';
const ORDER_DIGITS = 12;
const WANTED = 'wanted';
const LAST_CHECK = 'last-check';
const FILE = 'file/';

/** What the copy remembers, each record written whole: a kill between two of them leaves a state that can be gone on from. */
export class KeptRecords {
  readonly #store: Store;
  readonly #tell: () => void;
  /** On a full phone they are remembered for as long as this runs. */
  #withoutRoom: SeenNows = [];
  #lastCheck: LastCheck | null = null;

  /** @param tell told whenever a now file was seen that was not the last one */
  constructor(store: Store, tell: () => void) {
    this.#store = store;
    this.#tell = tell;
  }

  async list(name: ListName): Promise<OfflineList | null> {
    const bytes = await this.#store.read(name);
    return bytes === undefined ? null : readOfflineList(bytes);
  }

  writeList(name: ListName, list: OfflineList): Promise<void> {
    return this.#store.write(name, encoded(list));
  }

  /** The now files that count, in the order they were seen, those that found no room among them. */
  async seen(): Promise<SeenNows> {
    const kept = (await this.#seenNames()).map((name) => this.#store.read(name));
    const nows = (await Promise.all(kept)).map((bytes) => bytes && parsedJson(bytes));
    return [...(nows.filter((now) => now !== undefined && now !== null) as NowFile[]), ...this.#withoutRoom].reduce(
      (seen: SeenNows, now) => seeNow(seen, now),
      [],
    );
  }

  /** Takes in a now file. Each has a name of its own, so that two taken in at once do not undo one another. */
  async see(now: NowFile): Promise<void> {
    const names = await this.#seenNames();
    const last = names.at(-1) ?? `${SEEN}0`;
    if (last.endsWith(`/${now.edition}`)) return;
    const order = Number(last.slice(SEEN.length).split('/')[0]) + 1;
    const name = `${SEEN}${String(order).padStart(ORDER_DIGITS, '0')}/${now.edition}`;
    try {
      await this.#store.write(name, encoded(now));
    } catch {
      const isKnown = this.#withoutRoom.at(-1)?.edition === now.edition;
      this.#withoutRoom = seeNow(this.#withoutRoom, now);
      if (!isKnown) this.#tell();
      return;
    }
    this.#tell();
    const others = (await this.seen()).map(({ edition }) => edition).filter((edition) => edition !== now.edition);
    for (const old of names) {
      if (!others.includes(old.slice(old.lastIndexOf('/') + 1))) await this.#store.remove(old);
    }
  }

  async #seenNames(): Promise<readonly string[]> {
    return (await this.#store.names()).filter((name) => name.startsWith(SEEN)).sort();
  }

  /** The sets beyond the visitors' own that somebody used on this phone. */
  async wanted(): Promise<readonly string[]> {
    const bytes = await this.#store.read(WANTED);
    return ((bytes && parsedJson(bytes)) ?? []) as string[];
  }

  /** True where it was not wanted before. @throws where there is no room */
  async want(set: string): Promise<boolean> {
    const wanted = await this.wanted();
    if (wanted.includes(set)) return false;
    await this.#store.write(WANTED, encoded([...wanted, set]));
    return true;
  }

  async lastCheck(): Promise<LastCheck | null> {
    if (this.#lastCheck !== null) return this.#lastCheck;
    const bytes = await this.#store.read(LAST_CHECK);
    return ((bytes && parsedJson(bytes)) ?? null) as LastCheck | null;
  }

  async writeLastCheck(check: LastCheck): Promise<void> {
    this.#lastCheck = check;
    await this.#store.write(LAST_CHECK, encoded(check)).catch(() => undefined);
  }

  /** A kept file, held against its digest once more: what a failing phone damaged is not there. */
  async file(digest: string | undefined): Promise<Uint8Array | undefined> {
    if (digest === undefined) return undefined;
    const bytes = await this.#store.read(FILE + digest);
    if (bytes === undefined || (await shortDigest(bytes)) === digest) return bytes;
    await this.#store.remove(FILE + digest);
    return undefined;
  }

  /** Keeps a file if it is what its digest says. Whether it is. */
  async keepFile(digest: string, bytes: Uint8Array): Promise<boolean> {
    if ((await shortDigest(bytes)) !== digest) return false;
    await this.#store.write(FILE + digest, bytes);
    return true;
  }

  /** Digests of all kept files, in the order in which they came. */
  async keptDigests(): Promise<ReadonlySet<string>> {
    const names = await this.#store.names();
    return new Set(names.filter((name) => name.startsWith(FILE)).map((name) => name.slice(FILE.length)));
  }

  async dropFile(digest: string): Promise<void> {
    await this.#store.remove(FILE + digest);
  }
}

function encoded(value: unknown): Uint8Array {
  return new TextEncoder().encode(JSON.stringify(value));
}
