import type { ServerResponse } from 'node:http';

/** Counts what a server is answering, so that the pages are never taken away from under an answer. */
export class RequestsAtWork {
  #count = 0;
  #waiting: (() => void) | null = null;

  /** An answer has begun; it ends with its response. */
  begin(response: ServerResponse): void {
    this.#count += 1;
    response.once('close', () => {
      this.#count -= 1;
      if (this.#count > 0 || this.#waiting === null) return;
      const next = this.#waiting;
      this.#waiting = null;
      next();
    });
  }

  /** Does something once no answer is at work; of several that wait, the last alone is done. */
  whenIdle(next: () => void): void {
    if (this.#count === 0) next();
    else this.#waiting = next;
  }
}
