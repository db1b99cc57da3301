import { expect, it } from 'vitest';
import { tornAt } from '../../../src/atlas/drawing/torn-bank.ts';
import { expectWellFormed } from './compare-drawing.ts';

it.each([20, 40, 86, 136])('tears %d units from top to bottom and closes where it began, both edges alike', (high) => {
  const torn = tornAt(50, 10, 10 + high);
  expectWellFormed(torn);
  const [, down, across, up] = /M46,10l(.*?)h(.*?)l(.*?)z/.exec(torn)!;
  const steps = (path: string) => path.split(' ').map((pair) => pair.split(',').map(Number) as [number, number]);
  const sum = (all: readonly (readonly [number, number])[], axis: 0 | 1) =>
    all.reduce((to, each) => to + each[axis], 0);
  expect(sum(steps(down!), 1)).toBeCloseTo(high, 0);
  expect(sum(steps(up!), 1)).toBeCloseTo(-high, 0);
  expect(Number(across)).toBe(8);
  const back = steps(up!).toReversed();
  expect(back.map(([x]) => -x)).toEqual(steps(down!).map(([x]) => x));
});
