import type { PlanePoint } from '../plane/plane-point.ts';
import type { PathEdge, PathGraph } from './path-graph.ts';
import type { PathSnap, ShortestPaths } from './shortest-paths.ts';

/** A place farther than this from every path is not joined to them. */
const STEP_TO_PATH_METRES = 30;

/** The nearest point to a place of the paths for which `usable` says yes; null where none lies within 30 m. */
export function pathSnapOf(
  graph: PathGraph,
  p: PlanePoint,
  usable: (edge: PathEdge) => boolean = () => true,
): PathSnap | null {
  let nearest: PathSnap | null = null;
  for (const { segment, share, distanceMetres } of graph.index.within(p, STEP_TO_PATH_METRES)) {
    const isNearer = nearest === null || distanceMetres < nearest.offMetres;
    if (isNearer && usable(graph.edges[segment]!)) nearest = { edge: segment, share, offMetres: distanceMetres };
  }
  return nearest;
}

/** Where a snap lies on its edge. */
export function snapPoint({ nodes, edges }: PathGraph, { edge, share }: PathSnap): PlanePoint {
  const [a, b] = [nodes[edges[edge]!.from]!, nodes[edges[edge]!.to]!];
  return { x: a.x + share * (b.x - a.x), y: a.y + share * (b.y - a.y) };
}

/** The way from the ways' beginning to a place beside the paths. */
export interface Arrival {
  readonly metres: number;
  /** Which of the starts it began at. */
  readonly from: number;
  /** The node it comes through; −1 where start and place lie on the same edge and the way runs along it. */
  readonly node: number;
}

/** The shortest way to a snap, along its edge from either end or straight from a start on the same edge; null where no way leads. */
export function arrivalAt(
  graph: PathGraph,
  ways: ShortestPaths,
  starts: readonly PathSnap[],
  there: PathSnap,
): Arrival | null {
  const edge = graph.edges[there.edge]!;
  let best: Arrival | null = null;
  const offer = (arrival: Arrival) => {
    if (arrival.metres < (best?.metres ?? Number.POSITIVE_INFINITY)) best = arrival;
  };
  offer({
    metres: ways.metres[edge.from]! + there.share * edge.metres + there.offMetres,
    from: ways.from[edge.from]!,
    node: edge.from,
  });
  offer({
    metres: ways.metres[edge.to]! + (1 - there.share) * edge.metres + there.offMetres,
    from: ways.from[edge.to]!,
    node: edge.to,
  });
  starts.forEach((start, from) => {
    if (start.edge !== there.edge) return;
    const along = Math.abs(start.share - there.share) * edge.metres;
    offer({ metres: start.offMetres + along + there.offMetres, from, node: -1 });
  });
  return best;
}

/** The nodes of the way behind an arrival, from the one it comes through back to the first; none where it runs along one edge. */
export function nodesBack({ edges }: PathGraph, { by }: ShortestPaths, { node }: Arrival): readonly number[] {
  const nodes: number[] = [];
  for (let at = node; at !== -1; ) {
    nodes.push(at);
    const edge = edges[by[at]!];
    at = edge === undefined ? -1 : edge.from === at ? edge.to : edge.from;
  }
  return nodes;
}
