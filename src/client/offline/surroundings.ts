import type { Day } from '../../domain/day.ts';

/** Where the phone keeps files by name. A write is whole or did not happen, as the browser's Cache promises. */
export interface Store {
  /** What is kept under a name. */
  read(name: string): Promise<Uint8Array | undefined>;
  /** @throws where there is no room */
  write(name: string, bytes: Uint8Array): Promise<void>;
  remove(name: string): Promise<void>;
  names(): Promise<readonly string[]>;
}

/** What a host answered. */
export interface Answer {
  readonly status: number;
  readonly bytes: Uint8Array;
}

/** Everything the offline copy needs of the world, so that a test can be the phone, the host and the network. */
export interface Surroundings {
  readonly store: Store;
  /**
   * Asks the host for a file below the guide's base. Null where no answer came.
   * @param past `browser`: ask even where the browser thinks it knows; `everything`: past the caches on the way, too
   */
  ask(path: string, past: 'browser' | 'everything'): Promise<Answer | null>;
  wait(milliseconds: number): Promise<void>;
  /** The day on the wall of whoever reads. */
  today(): Day;
  /** Milliseconds since 1970. */
  time(): number;
  /** Tells the pages that are open that there is news. */
  tell(): void;
  /** The reader asked the browser to save data. */
  savesData(): boolean;
}

/** What comes in time, or null. */
export function inTime<T>(work: Promise<T>, { wait }: Pick<Surroundings, 'wait'>, milliseconds: number) {
  return Promise.race([work, wait(milliseconds).then(() => null)]);
}
