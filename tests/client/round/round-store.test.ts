import 'fake-indexeddb/auto';
import { IDBFactory, IDBObjectStore } from 'fake-indexeddb';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { openRoundStore, type RoundStore, StorageFull } from '../../../src/client/round/round-store.ts';
import { emptyDraft, PHOTO, ROUND, WHOLE } from './example-draft.ts';

let store: RoundStore;

beforeEach(async () => {
  vi.stubGlobal('indexedDB', new IDBFactory());
  store = await openRoundStore();
});

afterEach(() => {
  store.close();
  vi.restoreAllMocks();
  vi.unstubAllGlobals();
});

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
    store = await openRoundStore();
    expect(await store.whole(ROUND.ref)).toEqual(WHOLE);
  });

  it('are told apart by venue, and one that was handed over is not gone on with', async () => {
    expect(await store.openRound('abc')).toBeUndefined();
    await store.saveRound({ ...ROUND, ref: 'older', day: '2026-10-01' });
    await store.saveRound(ROUND);
    await store.saveRound({ ...ROUND, ref: 'other', venue: { id: 'else', name: 'Else' }, day: '2026-12-01' });
    expect((await store.openRound('abc'))?.ref).toBe(ROUND.ref);
    await store.saveRound({ ...ROUND, handedOver: '2026-11-12T14:00:00Z' });
    expect((await store.openRound('abc'))?.ref).toBe('older');
    expect((await store.rounds()).map(({ ref }) => ref)).toEqual(['other', ROUND.ref, 'older']);
  });

  it('keep a peg as it was last typed', async () => {
    await store.saveRound(ROUND);
    await store.savePeg(emptyDraft('1', { fields: { note: 'h' } }));
    await store.savePeg(emptyDraft('1', { fields: { note: 'half a wo' } }));
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

describe('when the phone is full', () => {
  it('says so and keeps everything saved before', async () => {
    await store.saveWhole(WHOLE);
    fillPhone();
    await expect(store.savePeg(emptyDraft('1', { fields: { note: 'new' } }))).rejects.toBeInstanceOf(StorageFull);
    await expect(store.savePhoto({ ...PHOTO, id: 'p2' })).rejects.toBeInstanceOf(StorageFull);
    await expect(store.saveWhole({ ...WHOLE, pegs: [] })).rejects.toBeInstanceOf(StorageFull);
    vi.restoreAllMocks();
    expect(await store.whole(ROUND.ref)).toEqual(WHOLE);
  });

  it('saves again once there is room', async () => {
    await store.saveRound(ROUND);
    fillPhone();
    await expect(store.savePeg(emptyDraft())).rejects.toBeInstanceOf(StorageFull);
    vi.restoreAllMocks();
    await store.savePeg(emptyDraft());
    expect((await store.whole(ROUND.ref))?.pegs).toEqual([emptyDraft()]);
  });
});
