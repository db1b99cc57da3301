import type { Answer, Store, Surroundings } from '../../../src/client/offline/surroundings.ts';
import { bytesOf } from './made-guide.ts';

/** What a host, or something on the way, does to the next question. */
export type Trouble = 'none' | 'no-answer' | 'late' | 'stale' | 'half' | 'host-page' | 403 | 404 | 429 | 500;

/** A phone with a store, a host that files are uploaded to, and caches on the way that may be behind. */
export class MadeWorld {
  readonly kept = new Map<string, Uint8Array>();
  readonly host = new Map<string, Uint8Array>();
  /** States the host was in before: what a stale cache on the way may still hand out. */
  readonly past: Map<string, Uint8Array>[] = [];
  readonly asked: string[] = [];
  isOnline = true;
  isFull = false;
  savesData = false;
  day = '2026-11-20';
  minutes = 0;
  /** What befalls the next questions; none once it is used up. */
  troubles: Trouble[] = [];
  /** How many more writes and answers until the browser ends the worker. */
  lifeLeft = Number.POSITIVE_INFINITY;
  /** Told of every answer that reached the phone. */
  delivered: (path: string, bytes: Uint8Array) => void = () => undefined;
  readonly #late: Promise<unknown>[] = [];
  /** Nobody's patience ends while every answer is prompt: the test hangs on no clock. */
  #patience = Promise.withResolvers<void>();
  #lateArrive = Promise.withResolvers<void>();
  #generation = 0;

  /** The worker is ended: whatever it was doing never goes on. */
  kill(): void {
    this.#generation += 1;
    this.lifeLeft = Number.POSITIVE_INFINITY;
  }

  get isKilled(): boolean {
    return this.lifeLeft <= 0;
  }

  /** Answers that came too late have arrived by then. */
  async settle(): Promise<void> {
    this.#lateArrive.resolve();
    await Promise.all(this.#late.splice(0));
    await new Promise((resolve) => setTimeout(resolve, 0));
    this.#patience = Promise.withResolvers<void>();
    this.#lateArrive = Promise.withResolvers<void>();
  }

  surroundings(): Surroundings {
    const born = this.#generation;
    /** Resolves while the worker lives, and never afterwards. */
    const alive = async <T>(work: () => T): Promise<T> => {
      if (born !== this.#generation || this.lifeLeft <= 0) return new Promise<never>(() => undefined);
      this.lifeLeft -= 1;
      return work();
    };
    const store: Store = {
      read: (name) => Promise.resolve(this.kept.get(name)),
      write: (name, bytes) =>
        alive(() => {
          if (this.isFull) throw new Error('QuotaExceededError');
          this.kept.set(name, bytes.slice());
        }),
      remove: (name) =>
        alive(() => {
          this.kept.delete(name);
        }),
      names: () => Promise.resolve([...this.kept.keys()]),
    };
    return {
      store,
      ask: async (path) => {
        this.asked.push(path);
        const trouble = this.isOnline ? (this.troubles.shift() ?? 'none') : 'no-answer';
        const answer = this.#answer(path, trouble);
        const answered = () =>
          alive(() => {
            if (answer?.status === 200) this.delivered(path, answer.bytes);
            return answer;
          });
        if (trouble !== 'late') return answered();
        setTimeout(this.#patience.resolve, 0);
        setTimeout(this.#lateArrive.resolve, 2);
        const late = this.#lateArrive.promise.then(answered);
        this.#late.push(late);
        return late;
      },
      wait: () => this.#patience.promise,
      today: () => this.day,
      time: () => this.minutes * 60_000,
      tell: () => undefined,
      savesData: () => this.savesData,
    };
  }

  #answer(path: string, trouble: Trouble): Answer | null {
    if (trouble === 'no-answer') return null;
    if (trouble === 'host-page')
      return { status: 200, bytes: bytesOf('<html><body>This site is parked.</body></html>') };
    if (typeof trouble === 'number') return { status: trouble, bytes: bytesOf(`<html><body>${trouble}</body></html>`) };
    const from =
      trouble === 'stale' ? (this.past[this.asked.length % Math.max(1, this.past.length)] ?? this.host) : this.host;
    const bytes = from.get(path);
    if (bytes === undefined) return { status: 404, bytes: bytesOf('<html><body>Not found</body></html>') };
    return { status: 200, bytes: trouble === 'half' ? bytes.slice(0, Math.floor(bytes.length / 2)) : bytes };
  }
}
