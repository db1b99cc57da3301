import 'fake-indexeddb/auto';
import { expect, test } from 'vitest';
import { MatchStore } from '../../../src/client/match-day/match-store.ts';
import { mergedNotes } from '../../../src/match-day/match-log.ts';

test('keeps every note of a match apart from other matches and other guides of the same host', async () => {
  const store = await MatchStore.open('/one/', 'm1');
  await store.note('scales p/1', 1, '2026-12-06T15:00:00Z');
  await store.note('scales p/1', 2, '2026-12-06T15:01:00Z');
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
      (i % 2 === 0 ? one : other).note(`scales p/${i % 5}`, i, '2026-12-06T15:00:00Z'),
    ),
  );
  const notes = await one.notes();
  expect(notes).toHaveLength(20);
  expect(new Set(notes.map(({ id }) => id)).size).toBe(20);
});

test('takes the notes of another phone all at once, and again without harm', async () => {
  const [one, other] = [await MatchStore.open('/a/', 'm'), await MatchStore.open('/b/', 'm')];
  await other.note('scales p/1', 1, '2026-12-07T15:00:00Z');
  const taken = await other.notes();
  await one.take(taken);
  await one.take(taken);
  expect(mergedNotes(await one.notes(), taken).added).toBe(0);
});
