import { describe, expect, test } from 'vitest';
import { workKeeper } from '../../src/atlas/work-keeper.ts';

describe('workKeeper', () => {
  test('does work once for the same inputs, in this run and in one that is given what it kept', () => {
    let done = 0;
    const work = (inputs: readonly string[], keeper: ReturnType<typeof workKeeper>) =>
      keeper.of(inputs, () => ({ sum: inputs.length, count: ++done }));
    const first = workKeeper();
    const told = work(['a', 'b'], first);
    const second = workKeeper(JSON.parse(JSON.stringify(first.kept())));
    expect(work(['a', 'b'], second)).toEqual(told);
    expect(done).toBe(1);
    work(['ab'], second);
    work(['a', 'b', ''], second);
    expect(done).toBe(3);
  });

  test('lets go what a run no longer asks for', () => {
    const first = workKeeper();
    first.of(['old'], () => 1);
    const second = workKeeper(first.kept());
    second.of(['new'], () => 2);
    expect(Object.values(second.kept())).toEqual([2]);
  });

  test('knows a beginning of a list again, and no other, in whichever order it is asked', () => {
    const { beginnings } = workKeeper();
    const [short, long] = [beginnings(['a', 'b', 'c']), beginnings(['a', 'b', 'd', 'e'])];
    const two = short(2);
    expect([long(4) === short(3), long(3) === short(3), long(2) === two, short(2) === two]).toEqual([
      false,
      false,
      true,
      true,
    ]);
    expect(beginnings(['ab'])(1)).not.toBe(two);
  });
});
