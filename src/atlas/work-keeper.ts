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
      const key = createHash('sha256').update(JSON.stringify(inputs)).digest('hex');
      const result = Object.hasOwn(before, key) ? (before[key] as Result) : work();
      kept[key] = result;
      return result;
    },
    beginnings,
    kept: () => kept,
  };
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
