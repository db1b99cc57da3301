import type { PathEdge, PathGraph } from './path-graph.ts';

/** Somewhere beside the paths, joined to its nearest point on them by a straight step. */
export interface PathSnap {
  readonly edge: number;
  /** Where on the edge: 0 at its start, 1 at its end. */
  readonly share: number;
  /** The step from the place to the path. */
  readonly offMetres: number;
}

/** Shortest ways from one or several places to every node of the net. */
export interface ShortestPaths {
  /** Infinite where no way leads. */
  readonly metres: Float64Array;
  /** The edge by which the way comes to the node; −1 at its beginning and where no way leads. */
  readonly by: Int32Array;
  /** Which of the places the way begins at; −1 where no way leads. */
  readonly from: Int32Array;
}

/**
 * Shortest ways from the nearest of some snaps to every node (Dijkstra, Numerische Mathematik 1, 1959, with a binary
 * heap). Edges for which `usable` says no are not walked.
 */
export function shortestPaths(
  { nodes, edges, edgesAt }: PathGraph,
  starts: readonly PathSnap[],
  usable: (edge: PathEdge) => boolean = () => true,
): ShortestPaths {
  const metres = new Float64Array(nodes.length).fill(Number.POSITIVE_INFINITY);
  const by = new Int32Array(nodes.length).fill(-1);
  const from = new Int32Array(nodes.length).fill(-1);
  const heap = nodeHeap();
  const reach = (node: number, distance: number, edge: number, start: number) => {
    if (distance >= metres[node]!) return;
    metres[node] = distance;
    by[node] = edge;
    from[node] = start;
    heap.push(node, distance);
  };
  starts.forEach(({ edge, share, offMetres }, start) => {
    const along = edges[edge]!;
    if (!usable(along)) return;
    reach(along.from, offMetres + share * along.metres, -1, start);
    reach(along.to, offMetres + (1 - share) * along.metres, -1, start);
  });
  for (let next = heap.pop(); next !== null; next = heap.pop()) {
    const { node, distance } = next;
    if (distance > metres[node]!) continue;
    for (const e of edgesAt[node]!) {
      const edge = edges[e]!;
      if (usable(edge)) reach(edge.from === node ? edge.to : edge.from, distance + edge.metres, e, from[node]!);
    }
  }
  return { metres, by, from };
}

/** A heap of nodes with the least distance on top. */
function nodeHeap() {
  const nodes: number[] = [];
  const distances: number[] = [];
  const swap = (i: number, j: number) => {
    [nodes[i], nodes[j]] = [nodes[j]!, nodes[i]!];
    [distances[i], distances[j]] = [distances[j]!, distances[i]!];
  };
  return {
    push(node: number, distance: number) {
      nodes.push(node);
      distances.push(distance);
      for (let i = nodes.length - 1; i > 0; ) {
        const parent = (i - 1) >> 1;
        if (distances[parent]! <= distances[i]!) break;
        swap(i, parent);
        i = parent;
      }
    },
    pop(): { readonly node: number; readonly distance: number } | null {
      if (nodes.length === 0) return null;
      swap(0, nodes.length - 1);
      const top = { node: nodes.pop()!, distance: distances.pop()! };
      for (let i = 0; ; ) {
        let least = i;
        for (const child of [2 * i + 1, 2 * i + 2]) {
          if (child < nodes.length && distances[child]! < distances[least]!) least = child;
        }
        if (least === i) return top;
        swap(i, least);
        i = least;
      }
    },
  };
}
