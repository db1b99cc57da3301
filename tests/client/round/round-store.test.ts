import 'fake-indexeddb/auto';
import { IDBFactory, IDBObjectStore } from 'fake-indexeddb';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import type { Round } from '../../../src/client/round/draft.ts';
import {
  openRoundStore,
  RoundGone,
  RoundHandedOver,
  type RoundStore,
  StorageFull,
} from '../../../src/client/round/round-store.ts';
import { emptyDraft, PHOTO, ROUND, WHOLE } from './example-draft.ts';

let store: RoundStore;

beforeEach(async () => {
  vi.stubGlobal('indexedDB', new IDBFactory());
  store = await openRoundStore('/', ROUND.venue.id);
});

afterEach(() => {
  store.close();
  vi.restoreAllMocks();
  vi.unstubAllGlobals();
});

/** Puts a round on the phone, or in the place of the one there. */
function put(round: Round): Promise<void> {
  return store.saveWhole({ round, pegs: [], gauges: [], photos: [] });
}

/** From now on the phone is full. */
function fillPhone(): void {
  vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(() => {
    throw new DOMException('no room', 'QuotaExceededError');
  });
}

describe('the rounds on the phone', () => {
  it('are still there when the page is opened anew', async () => {
    await store.saveWhole(WHOLE);
    store.close();
    store = await openRoundStore('/', ROUND.venue.id);
    expect(await store.whole(ROUND.ref)).toEqual(WHOLE);
  });

  it('are told apart by venue, and one that was handed over is not gone on with', async () => {
    expect(await store.openRound('abc')).toBeUndefined();
    await put({ ...ROUND, ref: 'older', day: '2026-10-01' });
    await put(ROUND);
    await put({ ...ROUND, ref: 'other', venue: { id: 'else', name: 'Else' }, day: '2026-12-01' });
    expect((await store.openRound('abc'))?.ref).toBe(ROUND.ref);
    await put({ ...ROUND, handedOver: '2026-11-12T14:00:00Z' });
    expect((await store.openRound('abc'))?.ref).toBe('older');
    expect((await store.rounds()).map(({ ref }) => ref)).toEqual(['other', ROUND.ref, 'older']);
  });

  it('keep a peg as it was last typed', async () => {
    await put(ROUND);
    await store.patchPeg(emptyDraft('1'), { fields: { note: 'h' } });
    await store.patchPeg(emptyDraft('1'), { fields: { note: 'half a wo' } });
    expect((await store.whole(ROUND.ref))?.pegs).toEqual([emptyDraft('1', { fields: { note: 'half a wo' } })]);
  });

  it('put a file read back in into the place of the same round, whole', async () => {
    await store.saveWhole(WHOLE);
    await store.saveWhole({ ...WHOLE, pegs: [emptyDraft('2')], photos: [] });
    expect(await store.whole(ROUND.ref)).toMatchObject({ pegs: [{ peg: '2' }], photos: [] });
  });

  it('are deleted with everything on them', async () => {
    await store.saveWhole(WHOLE);
    await store.saveWhole({ ...WHOLE, round: { ...ROUND, ref: 'other' }, pegs: [], gauges: [], photos: [] });
    await store.removeRound(ROUND.ref);
    expect(await store.whole(ROUND.ref)).toBeUndefined();
    expect((await store.rounds()).map(({ ref }) => ref)).toEqual(['other']);
    await store.removePhoto(PHOTO.ref, PHOTO.id);
  });
});

describe('one draft in two tabs', () => {
  it('keeps what each of them noted at one peg', async () => {
    await put(ROUND);
    const empty = emptyDraft('1', { seen: false });
    await store.patchPeg(empty, { fields: { status: 'closed', reason: 'slip' }, seen: true });
    await store.patchPeg(empty, { fields: { note: 'from the other tab' }, seen: true });
    expect((await store.whole(ROUND.ref))?.pegs[0]?.fields).toEqual({
      status: 'closed',
      reason: 'slip',
      note: 'from the other tab',
    });
  });

  it('begins one round, however often it is begun', async () => {
    const begun = await Promise.all([store.beginRound(ROUND), store.beginRound({ ...ROUND, ref: 'second' })]);
    expect(new Set(begun.map(({ ref }) => ref)).size).toBe(1);
    expect(await store.rounds()).toHaveLength(1);
  });

  it('writes nothing into a round that is gone, or was handed over', async () => {
    await expect(store.patchPeg(emptyDraft('1'), {})).rejects.toBeInstanceOf(RoundGone);
    await expect(store.changeRound(ROUND.ref, (round) => round)).rejects.toBeInstanceOf(RoundGone);
    await put({ ...ROUND, handedOver: '2026-11-12T14:00:00Z' });
    await expect(store.patchPeg(emptyDraft('1'), {})).rejects.toBeInstanceOf(RoundHandedOver);
    await expect(store.savePhoto(PHOTO)).rejects.toBeInstanceOf(RoundHandedOver);
    expect((await store.whole(ROUND.ref))?.pegs).toEqual([]);
  });
});

describe('when the phone is full', () => {
  it('says so and keeps everything saved before', async () => {
    await store.saveWhole(WHOLE);
    fillPhone();
    await expect(store.patchPeg(emptyDraft('1'), { fields: { note: 'new' } })).rejects.toBeInstanceOf(StorageFull);
    await expect(store.savePhoto({ ...PHOTO, id: 'p2' })).rejects.toBeInstanceOf(StorageFull);
    await expect(store.saveWhole({ ...WHOLE, pegs: [] })).rejects.toBeInstanceOf(StorageFull);
    vi.restoreAllMocks();
    expect(await store.whole(ROUND.ref)).toEqual(WHOLE);
  });

  it('saves again once there is room', async () => {
    await put(ROUND);
    fillPhone();
    await expect(store.patchPeg(emptyDraft(), {})).rejects.toBeInstanceOf(StorageFull);
    vi.restoreAllMocks();
    await store.patchPeg(emptyDraft(), {});
    expect((await store.whole(ROUND.ref))?.pegs).toEqual([emptyDraft()]);
  });
});

describe('two guides of one host', () => {
  const EAST = { ...ROUND, ref: 'east', venue: { id: 'east', name: 'East' } };
  const opened: RoundStore[] = [];
  const open = async (base: string, venue: string) => {
    const guide = await openRoundStore(base, venue);
    opened.push(guide);
    return guide;
  };
  afterEach(() => {
    for (const guide of opened.splice(0)) guide.close();
  });

  it('keep their rounds apart, though they draw the same reference', async () => {
    const east = await open('/east/', 'east');
    const west = await open('/west/', 'west');
    await east.beginRound(EAST);
    await west.beginRound({ ...EAST, venue: { id: 'west', name: 'West' } });
    expect((await east.rounds()).map(({ venue }) => venue.id)).toEqual(['east']);
    await west.removeRound(EAST.ref);
    expect(await east.rounds()).toHaveLength(1);
  });

  it('get back what was kept when all shared one place, each its own and whole', async () => {
    await store.saveWhole(WHOLE);
    await put(EAST);
    const east = await open('/east/', 'east');
    expect((await east.rounds()).map(({ ref }) => ref)).toEqual(['east']);
    expect((await store.rounds()).map(({ ref }) => ref)).toEqual([ROUND.ref]);
    const west = await open('/west/', ROUND.venue.id);
    expect(await west.whole(ROUND.ref)).toEqual(WHOLE);
    expect(await store.rounds()).toEqual([]);
  });

  it('lose nothing on a phone that is too full to bring it over', async () => {
    await store.saveWhole(WHOLE);
    fillPhone();
    const west = await open('/west/', ROUND.venue.id);
    expect(await west.rounds()).toEqual([]);
    expect(await store.whole(ROUND.ref)).toEqual(WHOLE);
  });

  it('go on with what was gone on with, where a phone went off in between', async () => {
    await store.saveWhole(WHOLE);
    const west = await open('/west/', 'west');
    await west.saveWhole({ ...WHOLE, round: { ...ROUND, by: 'Bailiff' } });
    const again = await open('/west/', ROUND.venue.id);
    expect((await again.whole(ROUND.ref))?.round.by).toBe('Bailiff');
    expect(await store.rounds()).toEqual([]);
  });
});
