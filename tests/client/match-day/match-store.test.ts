import 'fake-indexeddb/auto';
import { expect, test } from 'vitest';
import { MatchStore } from '../../../src/client/match-day/match-store.ts';
import { mergedNotes } from '../../../src/match-day/match-log.ts';

test('keeps every note of a match apart from other matches and other guides of the same host', async () => {
  const store = await MatchStore.open('/one/', 'm1');
  await store.note([['scales p/1', 1]], '2026-12-06T15:00:00Z');
  await store.note([['scales p/1', 2]], '2026-12-06T15:01:00Z');
  const phone = store.phone;
  store.close();
  const again = await MatchStore.open('/one/', 'm1');
  expect(again.phone).toBe(phone);
  expect((await again.notes()).map(({ value, replaces }) => [value, replaces.length])).toEqual([
    [1, 0],
    [2, 1],
  ]);
  expect(await (await MatchStore.open('/one/', 'm2')).notes()).toEqual([]);
  expect(await (await MatchStore.open('/two/', 'm1')).notes()).toEqual([]);
});

test('two tabs that note at once lose nothing and give no number twice', async () => {
  const [one, other] = [await MatchStore.open('/tabs/', 'm'), await MatchStore.open('/tabs/', 'm')];
  await Promise.all(
    Array.from({ length: 20 }, (_, i) =>
      (i % 2 === 0 ? one : other).note([[`scales p/${i % 5}`, i]], '2026-12-06T15:00:00Z'),
    ),
  );
  const notes = await one.notes();
  expect(notes).toHaveLength(20);
  expect(new Set(notes.map(({ id }) => id)).size).toBe(20);
});

test('gives the notes in the order in which they were made, the tenth behind the second', async () => {
  const store = await MatchStore.open('/order/', 'm');
  for (let i = 0; i < 12; i++) await store.note([[`entry ${i}`, { name: `n${i}` }]], '2026-12-06T08:00:00Z');
  expect((await store.notes()).map(({ about }) => about)).toEqual(Array.from({ length: 12 }, (_, i) => `entry ${i}`));
});

test('takes the notes of another phone all at once, and again without harm', async () => {
  const [one, other] = [await MatchStore.open('/a/', 'm'), await MatchStore.open('/b/', 'm')];
  await other.note([['scales p/1', 1]], '2026-12-07T15:00:00Z');
  const taken = await other.notes();
  await one.take(taken);
  await one.take(taken);
  expect(mergedNotes(await one.notes(), taken).added).toBe(0);
});

test('keeps what is typed until it is noted, and notes several things or none', async () => {
  const store = await MatchStore.open('/typed/', 'm1');
  await store.type('p/1 lb', '12');
  await store.type('p/1 oz', '4');
  await store.type('p/2 lb', '9');
  await store.type('p/2 lb', '');
  store.close();
  const again = await MatchStore.open('/typed/', 'm1');
  expect([...(await again.typed())]).toEqual([
    ['p/1 lb', '12'],
    ['p/1 oz', '4'],
  ]);
  expect((await (await MatchStore.open('/typed/', 'm2')).typed()).size).toBe(0);
  const unwritable = () => {};
  await expect(
    again.note(
      [
        ['scales p/1', 1],
        ['scales p/2', unwritable],
      ],
      '2026-12-06T15:00:00Z',
      ['p/1 lb', 'p/1 oz'],
    ),
  ).rejects.toThrow();
  expect(await again.notes()).toEqual([]);
  expect((await again.typed()).size).toBe(2);
  await again.note(
    [
      ['scales p/1', 1],
      ['scales p/1', 2],
    ],
    '2026-12-06T15:00:00Z',
    ['p/1 lb', 'p/1 oz'],
  );
  expect((await again.notes()).map(({ id, replaces }) => [id, replaces])).toEqual([
    [`${again.phone}.1`, []],
    [`${again.phone}.2`, [`${again.phone}.1`]],
  ]);
  expect((await again.typed()).size).toBe(0);
});

test('opens what a phone kept before fields were kept', async () => {
  const { openDB } = await import('idb');
  const old = await openDB('peg-atlas-matches /old/', 1, {
    upgrade: (database) => {
      database.createObjectStore('notes', { keyPath: ['match', 'id'] }).createIndex('match', 'match');
      database.createObjectStore('phones', { keyPath: 'match' });
    },
  });
  await old.put('phones', { match: 'm', phone: 'abc123' });
  await old.put('notes', { match: 'm', id: 'abc123.1', at: '', about: 'scales p/1', value: 1, replaces: [] });
  old.close();
  const store = await MatchStore.open('/old/', 'm');
  expect(store.phone).toBe('abc123');
  expect(await store.notes()).toHaveLength(1);
  await store.type('entry', 'Pat');
  expect((await store.typed()).get('entry')).toBe('Pat');
});
