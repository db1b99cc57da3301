import { expect, test } from 'vitest';
import { segmentIndex } from '../../../src/ground/plane/segment-index.ts';
import type { PathGraph } from '../../../src/ground/walk/path-graph.ts';
import { arrivalAt, nodesBack } from '../../../src/ground/walk/path-snap.ts';
import { type PathSnap, shortestPaths } from '../../../src/ground/walk/shortest-paths.ts';

/** Two paths end to end, 100 m and 50 m, with a third of 400 m back to the start. */
const path = { id: 'p', line: [] };
const graph: PathGraph = {
  nodes: [
    { x: 0, y: 0 },
    { x: 100, y: 0 },
    { x: 150, y: 0 },
  ],
  edges: [
    { from: 0, to: 1, metres: 100, path },
    { from: 1, to: 2, metres: 50, path },
    { from: 2, to: 0, metres: 400, path },
  ],
  edgesAt: [
    [0, 2],
    [0, 1],
    [1, 2],
  ],
  index: segmentIndex([]),
};

function arrive(start: PathSnap, there: PathSnap) {
  const ways = shortestPaths(graph, [start]);
  const arrival = arrivalAt(graph, ways, [start], there)!;
  return { metres: arrival.metres, nodes: nodesBack(graph, ways, arrival) };
}

test('a way along one stretch of path passes no junction, whichever way it runs', () => {
  const [near, far] = [
    { edge: 0, share: 0.25, offMetres: 3 },
    { edge: 0, share: 0.75, offMetres: 2 },
  ];
  expect(arrive(near, far)).toEqual({ metres: 3 + 50 + 2, nodes: [] });
  expect(arrive(far, near)).toEqual({ metres: 2 + 50 + 3, nodes: [] });
});

test('a way over several stretches passes the junctions between, and leaves its last stretch at the nearer end', () => {
  const start = { edge: 0, share: 0.5, offMetres: 0 };
  expect(arrive(start, { edge: 1, share: 0.4, offMetres: 1 })).toEqual({ metres: 50 + 20 + 1, nodes: [1] });
  // 50 m to the first junction, 50 m to the second, 40 m back along the third stretch; by its other end it is 410 m.
  expect(arrive(start, { edge: 2, share: 0.1, offMetres: 0 })).toEqual({ metres: 140, nodes: [2, 1] });
});
