import type { TextStore } from '../../src/client/text-store.ts';

/** A phone's store in memory. */
export function textStore(): TextStore {
  const kept = new Map<string, string>();
  return {
    getItem: (name) => kept.get(name) ?? null,
    setItem: (name, value) => void kept.set(name, value),
    removeItem: (name) => void kept.delete(name),
  };
}
