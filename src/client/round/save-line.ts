import { clockTime } from './elements.ts';
import { StorageFull } from './round-store.ts';

/**
 * Saves every change at once, one after the other, and says how that went. Of several changes to one thing that wait, only
 * the last is written. What could not be saved stays here and is tried again with the next change.
 */
export class SaveLine {
  readonly #waiting = new Map<string, () => Promise<void>>();
  readonly #said: HTMLElement;
  #running: Promise<void> | null = null;

  /** @param said where the state of saving is told */
  constructor(said: HTMLElement) {
    this.#said = said;
    // The page may be closed while a change waits for room; a phone asks before it lets that happen.
    addEventListener('beforeunload', (event) => {
      if (this.#waiting.size > 0) event.preventDefault();
    });
  }

  /** Saves a change of the thing named `key`. */
  save(key: string, write: () => Promise<void>): Promise<void> {
    this.#waiting.set(key, write);
    this.#running ??= this.#run();
    return this.#running;
  }

  /** Whether everything typed is saved. */
  get isSaved(): boolean {
    return this.#waiting.size === 0;
  }

  async #run(): Promise<void> {
    try {
      for (let next = this.#first(); next !== undefined; next = this.#first()) {
        const [key, write] = next;
        await write();
        if (this.#waiting.get(key) === write) this.#waiting.delete(key);
      }
      this.#say(`Saved on this phone, ${clockTime(new Date())}.`, false);
    } catch (error) {
      const why =
        error instanceof StorageFull
          ? 'The phone is full. Hand the round over now, or make room (old photos, other apps) and change anything here to try again.'
          : 'The phone did not let it be saved. Keep this page open and hand the round over now.';
      this.#say(`The last change is NOT saved. ${why} Everything saved before is still here.`, true);
    } finally {
      this.#running = null;
    }
  }

  #first(): [string, () => Promise<void>] | undefined {
    return this.#waiting.entries().next().value;
  }

  #say(sentence: string, isBad: boolean): void {
    this.#said.textContent = sentence;
    this.#said.classList.toggle('bad', isBad);
  }
}
