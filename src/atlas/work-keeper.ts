import { createHash } from 'node:crypto';
import type { KeptWork, WorkKeeper } from '../ratings/kept-work.ts';

/** A keeper that knows the work of earlier runs of this very code, and holds all that this run asks for. */
export interface RecordingKeeper extends WorkKeeper {
  readonly kept: () => KeptWork;
}

/** @param before What an earlier run kept; whatever this run does not ask for again is let go. */
export function workKeeper(before: KeptWork = {}): RecordingKeeper {
  const kept: Record<string, unknown> = {};
  return {
    of<Result>(inputs: readonly string[], work: () => Result): Result {
      const key = digestOf(inputs);
      const result = Object.hasOwn(before, key) ? (before[key] as Result) : work();
      kept[key] = result;
      return result;
    },
    beginnings,
    kept: () => kept,
  };
}

/** Each with its length before it: an input may be megabytes long, and is not written out once more. */
function digestOf(inputs: readonly string[]): string {
  const hash = createHash('sha256');
  for (const input of inputs) hash.update(`${input.length}\n`).update(input);
  return hash.digest('hex');
}

function beginnings(list: readonly unknown[]): (count: number) => string {
  let read = 0;
  let hash = createHash('sha256');
  return (count) => {
    if (count < read) {
      hash = createHash('sha256');
      read = 0;
    }
    for (; read < count; read++) hash.update(`${JSON.stringify(list[read])}\n`);
    return hash.copy().digest('hex');
  };
}
