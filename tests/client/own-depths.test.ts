import { describe, expect, it } from 'vitest';
import { forgetOwnDepth, keepOwnDepth, readOwnDepths } from '../../src/client/own-depths.ts';
import type { TextStore } from '../../src/client/text-store.ts';

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
    keepOwnDepth(store, { base: '/', key: 'pit/1' }, depth);
    expect(readOwnDepths(store, { base: '/', key: 'pit/1' })).toEqual([depth]);
    expect(readOwnDepths(store, { base: '/', key: 'pit/2' })).toEqual([]);
  });

  it('hold one depth a line, the latest', () => {
    const store = storeOf();
    keepOwnDepth(store, { base: '/', key: 'pit/1' }, depth);
    keepOwnDepth(store, { base: '/', key: 'pit/1' }, { ...depth, metres: 1.9 });
    expect(readOwnDepths(store, { base: '/', key: 'pit/1' }).map(({ metres }) => metres)).toEqual([1.9]);
  });

  it('leave nothing behind when forgotten', () => {
    const store = storeOf();
    keepOwnDepth(store, { base: '/', key: 'pit/1' }, depth);
    forgetOwnDepth(store, { base: '/', key: 'pit/1' }, 'pole-11');
    expect(store.getItem('peg-atlas/own-depths/pit/1')).toBeNull();
  });

  it('of two guides of one host are kept apart, though both have a peg of that name', () => {
    const store = storeOf();
    const east = { base: '/east/', key: 'pit/1' };
    const west = { base: '/west/', key: 'pit/1' };
    keepOwnDepth(store, east, { ...depth, day: '2027-03-01' });
    keepOwnDepth(store, { base: '/', key: 'pit/1' }, { ...depth, metres: 1.1, day: '2027-03-01' });
    expect(readOwnDepths(store, east).map(({ metres }) => metres)).toEqual([2.1]);
    expect(readOwnDepths(store, west)).toEqual([]);
  });

  it('that were kept when all guides shared one place are lost in none of them', () => {
    const name = 'peg-atlas/own-depths/pit/1';
    const store = storeOf({ [name]: JSON.stringify([depth]) });
    const east = { base: '/east/', key: 'pit/1' };
    expect(readOwnDepths(store, east)).toEqual([depth]);
    keepOwnDepth(store, east, { ...depth, line: 'pole-6' });
    expect(readOwnDepths(store, east).map(({ line }) => line)).toEqual(['pole-11', 'pole-6']);
    forgetOwnDepth(store, east, 'pole-11');
    forgetOwnDepth(store, east, 'pole-6');
    expect(readOwnDepths(store, east)).toEqual([]);
    expect(readOwnDepths(store, { base: '/', key: 'pit/1' })).toEqual([depth]);
  });

  it('pass over what something else has written there', () => {
    const name = 'peg-atlas/own-depths/pit/1';
    expect(readOwnDepths(storeOf({ [name]: '{' }), { base: '/', key: 'pit/1' })).toEqual([]);
    expect(readOwnDepths(storeOf({ [name]: '{"a":1}' }), { base: '/', key: 'pit/1' })).toEqual([]);
    const mixed = JSON.stringify([depth, null, { ...depth, metres: -1 }, { ...depth, day: '2026-13-01' }]);
    expect(readOwnDepths(storeOf({ [name]: mixed }), { base: '/', key: 'pit/1' })).toEqual([depth]);
  });
});
