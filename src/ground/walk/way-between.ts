import type { MapPath } from '../../domain/map.ts';
import type { LatLng } from '../../domain/place.ts';
import { localPlane } from '../geodesy/local-plane.ts';
import type { Walk } from '../survey.ts';
import { type LineToPass, linesNear } from './lines-near.ts';
import { type PathEdge, pathGraph } from './path-graph.ts';
import { arrivalAt, nodesBack, pathSnapOf, snapPoint } from './path-snap.ts';
import { shortestPaths } from './shortest-paths.ts';
import { alongPath, arrivedAt, NO_WAY_YET, type WayFacts, withLines } from './way-facts.ts';

/** A way along drawn paths, with the steps off them at its ends. */
export interface Way {
  readonly points: readonly LatLng[];
  readonly metres: number;
  readonly paths: readonly MapPath[];
  readonly facts: WayFacts;
}

/**
 * Finds the way from any place to any other along drawn paths: the shortest that is clear of every overhead line; where
 * there is none, the shortest with the lines it passes. Null where the paths do not join the two: never a guess across.
 */
export function wayFinder(
  paths: readonly MapPath[],
  lines: readonly LineToPass[],
): (from: LatLng, to: LatLng) => Way | null {
  const origin = paths[0]?.line[0];
  if (origin === undefined) return () => null;
  const { toPlane, toPosition } = localPlane(origin);
  const graph = pathGraph(paths, toPlane);
  const near = linesNear(lines, toPlane);
  const nodeAt = (node: number) => graph.nodes[node]!;
  const below = new Set(graph.edges.filter(({ from, to }) => near(nodeAt(from), nodeAt(to)).length > 0));

  const wayOver = (from: LatLng, to: LatLng, usable: (edge: PathEdge) => boolean): Way | null => {
    const [a, b] = [toPlane(from), toPlane(to)];
    const [start, there] = [pathSnapOf(graph, a, usable), pathSnapOf(graph, b, usable)];
    if (start === null || there === null) return null;
    const ways = shortestPaths(graph, [start], usable);
    const arrival = arrivalAt(graph, ways, [start], there);
    if (arrival === null) return null;
    // From the start on; each piece by the edge it lies on.
    const nodes = nodesBack(graph, ways, arrival).toReversed();
    const points = [snapPoint(graph, start), ...nodes.map(nodeAt), snapPoint(graph, there)];
    const edges = [...nodes.map((node) => (ways.by[node] === -1 ? start.edge : ways.by[node]!)), there.edge];
    const walked = edges.map((edge) => graph.edges[edge]!.path);
    const onPaths = walked.reduce(
      (facts, path, i) => alongPath(facts, path, [points[i]!, points[i + 1]!], near),
      withLines(NO_WAY_YET, near(a, points[0]!)),
    );
    const facts = withLines(arrivedAt(onPaths, walked.at(-1)!), near(points.at(-1)!, b));
    return {
      points: [from, ...points.map(toPosition), to],
      metres: arrival.metres,
      paths: [...new Set(walked)],
      facts,
    };
  };

  return (from, to) => {
    const shortest = wayOver(from, to, () => true);
    if (shortest === null || shortest.facts.lines.length === 0) return shortest;
    const clear = wayOver(from, to, (edge) => !below.has(edge));
    return clear !== null && clear.facts.lines.length === 0 ? clear : shortest;
  };
}

/** What a way is like, as a walk to a peg is told: the steps of the peg's own bank are its last. */
export function walkOf(
  { metres, facts }: Pick<Way, 'metres' | 'facts'>,
  from: string,
  bankSteps: number,
  lines: readonly Pick<LineToPass, 'name'>[],
): Walk {
  return {
    from,
    distanceMetres: metres,
    steps: facts.stepped.reduce((sum, { steps }) => sum + (steps ?? 0), bankSteps),
    steepest: facts.steepest,
    narrowestMetres: facts.narrowestMetres,
    stepFree: bankSteps > 0 ? false : facts.stepFree,
    notStated: facts.notStated,
    underLines: facts.lines.map((line) => lines[line]!.name),
  };
}
