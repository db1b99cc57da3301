import fc from 'fast-check';
import { expect, test } from 'vitest';
import { firstSelfCrossing } from '../../../src/content/checks/self-crossing.ts';

const ring = (...points: readonly (readonly [number, number])[]) => points.map(([x, y]) => ({ x, y }));

test('finds none in a square, whichever way it is drawn', () => {
  const square = ring([0, 0], [1, 0], [1, 1], [0, 1]);
  expect(firstSelfCrossing(square)).toBeNull();
  expect(firstSelfCrossing(square.toReversed())).toBeNull();
});

test('finds the two sides of a bow-tie', () => {
  expect(firstSelfCrossing(ring([0, 0], [1, 1], [1, 0], [0, 1]))).toEqual([0, 2]);
});

test('finds a ring that touches itself at a corner, and one that runs back over itself', () => {
  expect(firstSelfCrossing(ring([0, 0], [4, 0], [4, 4], [2, 0], [0, 4]))).not.toBeNull();
  expect(firstSelfCrossing(ring([0, 0], [4, 0], [4, 1], [3, 1], [3, 0], [1, 0], [0, 1]))).not.toBeNull();
});

test('finds none in any ring whose points go round their middle in order', () => {
  const distances = fc.array(fc.double({ min: 1, max: 10, noNaN: true }), { minLength: 3, maxLength: 60 });
  fc.assert(
    fc.property(distances, (metres) => {
      const star = metres.map((r, i) => ({
        x: r * Math.cos((2 * Math.PI * i) / metres.length),
        y: r * Math.sin((2 * Math.PI * i) / metres.length),
      }));
      expect(firstSelfCrossing(star)).toBeNull();
    }),
  );
});

test('finds the same as looking at every pair of sides', () => {
  const point = fc.record({ x: fc.integer({ min: 0, max: 9 }), y: fc.integer({ min: 0, max: 9 }) });
  fc.assert(
    fc.property(fc.uniqueArray(point, { minLength: 4, maxLength: 9, selector: ({ x, y }) => x * 10 + y }), (points) => {
      expect(firstSelfCrossing(points) !== null).toBe(crossesSomewhere(points));
    }),
    { numRuns: 500 },
  );
});

/** By the orientation of every two sides that share no corner. */
function crossesSomewhere(p: readonly { readonly x: number; readonly y: number }[]): boolean {
  type P = (typeof p)[number];
  const turn = (a: P, b: P, c: P) => Math.sign((b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x));
  const on = (a: P, b: P, c: P) => turn(a, b, c) === 0 && (c.x - a.x) * (c.x - b.x) + (c.y - a.y) * (c.y - b.y) <= 0;
  const n = p.length;
  for (let i = 0; i < n; i++) {
    for (let j = i + 2; j < n; j++) {
      if (i === 0 && j === n - 1) continue;
      const [a, b, c, d] = [p[i]!, p[i + 1]!, p[j]!, p[(j + 1) % n]!];
      if (turn(a, b, c) * turn(a, b, d) < 0 && turn(c, d, a) * turn(c, d, b) < 0) return true;
      if (on(a, b, c) || on(a, b, d) || on(c, d, a) || on(c, d, b)) return true;
    }
  }
  return false;
}

test('takes a comb of a hundred thousand corners, at any angle, and finds the one tooth that crosses', () => {
  const teeth = 50_000;
  const comb = Array.from({ length: teeth }, (_, i) => ({ x: i % 2 === 0 ? 0 : 900, y: i }))
    .flatMap(({ x, y }) => [
      { x, y },
      { x: 900 - x, y: y + 0.2 },
    ])
    .concat({ x: -10, y: teeth }, { x: -10, y: -5 });
  for (const turn of [0, 0.4, Math.PI / 4, Math.PI / 2]) {
    const turned = comb.map(({ x, y }) => ({
      x: x * Math.cos(turn) - y * Math.sin(turn),
      y: x * Math.sin(turn) + y * Math.cos(turn),
    }));
    expect(firstSelfCrossing(turned)).toBeNull();
    const crossed = turned.map((point, i) => (i === 40_001 ? turned[40_005]! : i === 40_005 ? turned[40_001]! : point));
    expect(firstSelfCrossing(crossed)).not.toBeNull();
  }
});
