import fc from 'fast-check';
import { expect, test } from 'vitest';
import { segmentIndex } from '../../../src/ground/plane/segment-index.ts';
import type { PathGraph } from '../../../src/ground/walk/path-graph.ts';
import { shortestPaths } from '../../../src/ground/walk/shortest-paths.ts';

type Lengths = readonly (readonly [from: number, to: number, metres: number])[];

function graphOf(size: number, lengths: Lengths): PathGraph {
  const path = { id: 'p', line: [] };
  const edges = lengths.map(([from, to, metres]) => ({ from, to, metres, path }));
  const edgesAt = Array.from({ length: size }, (_, node) =>
    edges.flatMap(({ from, to }, e) => (from === node || to === node ? [e] : [])),
  );
  return { nodes: Array.from({ length: size }, () => ({ x: 0, y: 0 })), edges, edgesAt, index: segmentIndex([]) };
}

/** All shortest ways by the method of Floyd and Warshall (1962), as an oracle. */
function allShortest(size: number, lengths: Lengths): number[][] {
  const metres = Array.from({ length: size }, (_, i) =>
    Array.from({ length: size }, (_, j) => (i === j ? 0 : Infinity)),
  );
  for (const [a, b, length] of lengths) {
    metres[a]![b] = Math.min(metres[a]![b]!, length);
    metres[b]![a] = Math.min(metres[b]![a]!, length);
  }
  for (let k = 0; k < size; k++) {
    for (let i = 0; i < size; i++) {
      for (let j = 0; j < size; j++) metres[i]![j] = Math.min(metres[i]![j]!, metres[i]![k]! + metres[k]![j]!);
    }
  }
  return metres;
}

// The worked example of Cormen, Leiserson, Rivest and Stein, Introduction to Algorithms, is directed; this one, with six
// places and the ways 7, 9, 14, 10, 15, 11, 2, 6 and 9, is the undirected example found in many encyclopaedias (from memory).
const KNOWN: Lengths = [
  [0, 1, 7],
  [0, 2, 9],
  [0, 5, 14],
  [1, 2, 10],
  [1, 3, 15],
  [2, 3, 11],
  [2, 5, 2],
  [3, 4, 6],
  [4, 5, 9],
];

test('shortest ways on a known graph are the known ones, by the known places', () => {
  const ways = shortestPaths(graphOf(6, KNOWN), [{ edge: 0, share: 0, offMetres: 0 }]);
  expect([...ways.metres]).toEqual([0, 7, 9, 20, 20, 11]);
  const before = [...ways.by].map((e) => (e === -1 ? null : KNOWN[e]!.slice(0, 2)));
  expect(before).toEqual([null, null, [0, 2], [2, 3], [4, 5], [2, 5]]);
});

test('shortest ways are those found by weighing all places between, on any graph', () => {
  const size = 9;
  const node = fc.integer({ min: 0, max: size - 1 });
  const edge = fc.tuple(node, node, fc.integer({ min: 1, max: 30 }));
  fc.assert(
    fc.property(fc.array(edge, { minLength: 1, maxLength: 25 }), (lengths) => {
      const start = lengths[0]![0];
      const ways = shortestPaths(graphOf(size, lengths), [{ edge: 0, share: 0, offMetres: 0 }]);
      // The start's own edge is walked from its beginning, whose length is the share of it.
      expect([...ways.metres]).toEqual(allShortest(size, lengths)[start]);
    }),
    { numRuns: 300 },
  );
});

test('from several starts every place is reached from the nearest of them', () => {
  const line = graphOf(5, [
    [0, 1, 10],
    [1, 2, 10],
    [2, 3, 10],
    [3, 4, 10],
  ]);
  const ways = shortestPaths(line, [
    { edge: 0, share: 0, offMetres: 0 },
    { edge: 3, share: 1, offMetres: 5 },
  ]);
  expect([...ways.from]).toEqual([0, 0, 0, 1, 1]);
  expect([...ways.metres]).toEqual([0, 10, 20, 15, 5]);
});

test('edges that may not be used are not walked, and what lies behind them is out of reach', () => {
  const ways = shortestPaths(
    graphOf(3, [
      [0, 1, 10],
      [1, 2, 10],
    ]),
    [{ edge: 0, share: 0, offMetres: 0 }],
    ({ to }) => to !== 2,
  );
  expect([...ways.metres]).toEqual([0, 10, Infinity]);
  expect(ways.from[2]).toBe(-1);
});
