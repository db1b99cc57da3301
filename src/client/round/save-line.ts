import { clockTime } from './elements.ts';
import { RoundGone, RoundHandedOver, StorageFull } from './round-store.ts';

/**
 * Saves every change at once, one after the other, and says how that went. What could not be saved stays here and is tried
 * again with the next change; it keeps nothing else from being saved.
 */
export class SaveLine {
  readonly #waiting = new Map<string, () => Promise<void>>();
  readonly #said: HTMLElement;
  readonly #onGone: () => void;
  /** Whether what was saved before is still on this phone, looked up and not assumed. */
  readonly #isStillThere: () => Promise<boolean>;
  #running: Promise<void> | null = null;

  /** @param said where the state of saving is told */
  constructor(said: HTMLElement, isStillThere: () => Promise<boolean>, onGone: () => void) {
    this.#said = said;
    this.#isStillThere = isStillThere;
    this.#onGone = onGone;
    // The page may be closed while a change waits for room; a phone asks before it lets that happen.
    addEventListener('beforeunload', (event) => {
      if (this.#waiting.size > 0) event.preventDefault();
    });
  }

  /** Saves a change of the thing named `key`: of several that wait only the last is written. */
  save(key: string, write: () => Promise<void>): Promise<void> {
    this.#waiting.delete(key);
    this.#waiting.set(key, write);
    this.#running ??= this.#run();
    return this.#running;
  }

  /** Tries again what waits. */
  retry(): Promise<void> {
    this.#running ??= this.#run();
    return this.#running;
  }

  /** Whether everything typed is saved. */
  get isSaved(): boolean {
    return this.#waiting.size === 0;
  }

  async #run(): Promise<void> {
    const failed = new Map<string, unknown>();
    // Where nothing waits this would end before the caller has noted that it runs, and would seem to run for ever.
    await Promise.resolve();
    try {
      for (let next = this.#next(failed); next !== undefined; next = this.#next(failed)) {
        const [key, write] = next;
        try {
          await write();
          if (this.#waiting.get(key) === write) this.#waiting.delete(key);
        } catch (error) {
          failed.set(key, error);
        }
      }
      if (failed.size === 0) this.#say(`Saved on this phone, ${clockTime(new Date())}.`, false);
      else await this.#sayFailed(failed);
    } finally {
      this.#running = null;
    }
  }

  #next(failed: ReadonlyMap<string, unknown>): [string, () => Promise<void>] | undefined {
    return [...this.#waiting].find(([key]) => !failed.has(key));
  }

  async #sayFailed(failed: ReadonlyMap<string, unknown>): Promise<void> {
    const errors = [...failed.values()];
    const what = [...failed.keys()].join(', ');
    if (errors.some((error) => error instanceof RoundHandedOver)) {
      this.#say(`NOT saved: ${what}. The round was handed over in another window: start a new one.`, true);
      return;
    }
    if (errors.some((error) => error instanceof RoundGone) || !(await this.#isStillThere())) {
      this.#say(
        'NOT saved. The round is no longer on this phone: its storage was cleared. What was noted is only in this page now.',
        true,
      );
      this.#onGone();
      return;
    }
    const why = errors.some((error) => error instanceof StorageFull)
      ? 'The phone is full. Hand the round over now, or make room (old photos, other apps) and change anything here to try again.'
      : 'The phone did not let it be saved. Keep this page open and hand the round over now.';
    this.#say(`NOT saved: ${what}. ${why} Everything saved before is still here.`, true);
  }

  #say(sentence: string, isBad: boolean): void {
    this.#said.textContent = sentence;
    this.#said.classList.toggle('bad', isBad);
  }
}
