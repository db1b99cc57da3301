import { expect, it } from 'vitest';
import { onceFor } from '../../src/domain/once-for.ts';

it('works an answer out once a key, also where the answer is nothing', () => {
  const asked: object[] = [];
  const nothing = onceFor((key: object) => {
    asked.push(key);
    return undefined;
  });
  const [one, other] = [{}, {}];
  for (const key of [one, other, one, other]) expect(nothing(key)).toBeUndefined();
  expect(asked).toEqual([one, other]);
});

it('keeps the answers of two keys apart, though the two look the same', () => {
  const lengthOf = onceFor((list: readonly number[]) => ({ length: list.length }));
  const [one, other] = [[1], [1]];
  expect(lengthOf(one)).toBe(lengthOf(one));
  expect(lengthOf(one)).not.toBe(lengthOf(other));
});
