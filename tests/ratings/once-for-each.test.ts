import { expect, test } from 'vitest';
import { onceForEach } from '../../src/ratings/once-for-each.ts';

test('makes each thing once, and what is made of nothing too', () => {
  const asked: (string | null)[] = [];
  const make = onceForEach((key: string | null) => {
    asked.push(key);
    return key === 'nothing' ? undefined : [key];
  });
  const first = make('a');
  expect(make('a')).toBe(first);
  expect(make('b')).not.toBe(first);
  expect([make('nothing'), make('nothing'), make(null), make(null)]).toEqual([undefined, undefined, [null], [null]]);
  expect(asked).toEqual(['a', 'b', 'nothing', null]);
});

test('keys are things, not what they look like', () => {
  const make = onceForEach((list: readonly number[]) => list.length);
  expect([make([1, 2]), make([1, 2])]).toEqual([2, 2]);
  const one = onceForEach((_: readonly number[]) => ({}));
  expect(one([1])).not.toBe(one([1]));
});
