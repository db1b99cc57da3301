import { describe, expect, it } from 'vitest';
import { forgetOwnDepth, keepOwnDepth, readOwnDepths, type TextStore } from '../../src/client/own-depths.ts';

const storeOf = (entries: Record<string, string> = {}): TextStore => {
  const kept = new Map(Object.entries(entries));
  return {
    getItem: (name) => kept.get(name) ?? null,
    setItem: (name, text) => void kept.set(name, text),
    removeItem: (name) => void kept.delete(name),
  };
};
const depth = { line: 'pole-11', metres: 2.1, day: '2026-11-21' };

describe('own depths', () => {
  it('are read as they were kept, each peg apart', () => {
    const store = storeOf();
    keepOwnDepth(store, 'pit/1', depth);
    expect(readOwnDepths(store, 'pit/1')).toEqual([depth]);
    expect(readOwnDepths(store, 'pit/2')).toEqual([]);
  });

  it('hold one depth a line, the latest', () => {
    const store = storeOf();
    keepOwnDepth(store, 'pit/1', depth);
    keepOwnDepth(store, 'pit/1', { ...depth, metres: 1.9 });
    expect(readOwnDepths(store, 'pit/1').map(({ metres }) => metres)).toEqual([1.9]);
  });

  it('leave nothing behind when forgotten', () => {
    const store = storeOf();
    keepOwnDepth(store, 'pit/1', depth);
    forgetOwnDepth(store, 'pit/1', 'pole-11');
    expect(store.getItem('peg-atlas/own-depths/pit/1')).toBeNull();
  });

  it('pass over what something else has written there', () => {
    const name = 'peg-atlas/own-depths/pit/1';
    expect(readOwnDepths(storeOf({ [name]: '{' }), 'pit/1')).toEqual([]);
    expect(readOwnDepths(storeOf({ [name]: '{"a":1}' }), 'pit/1')).toEqual([]);
    const mixed = JSON.stringify([depth, null, { ...depth, metres: -1 }, { ...depth, day: '2026-13-01' }]);
    expect(readOwnDepths(storeOf({ [name]: mixed }), 'pit/1')).toEqual([depth]);
  });
});
