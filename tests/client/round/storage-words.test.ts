import { describe, expect, it } from 'vitest';
import { storageWords } from '../../../src/client/round/storage-words.ts';

const storage = (persisted: boolean, granted: boolean): StorageManager =>
  ({ persisted: async () => persisted, persist: async () => granted }) as StorageManager;

describe('what is said of a browser’s storage', () => {
  it('promises to keep only where the browser does', async () => {
    expect(await storageWords(storage(true, false))).toMatch(/^This browser keeps/);
    expect(await storageWords(storage(false, true))).toMatch(/^This browser keeps/);
    expect(await storageWords(storage(false, false))).toMatch(/has not promised.*private window.*same day/);
  });

  it('says that it does not know where the browser does not say', async () => {
    expect(await storageWords({} as StorageManager)).toMatch(/does not say/);
    const broken = { persisted: () => Promise.reject(new Error('no')), persist: async () => true };
    expect(await storageWords(broken as unknown as StorageManager)).toMatch(/does not say/);
  });
});
