import type { MapPlace, Water } from '../../domain/map.ts';
import type { Peg } from '../../domain/peg.ts';
import type { LatLng } from '../../domain/place.ts';
import type { StandOffRule } from '../../domain/venue.ts';
import type { PlanePoint } from '../plane/plane-point.ts';
import { overheadLinesOf } from '../stand-off.ts';
import type { Walk } from '../survey.ts';
import { linesNear, linesToPass } from './lines-near.ts';
import { type PathEdge, type PathGraph, pathGraph } from './path-graph.ts';
import { arrivalAt, pathSnapOf, snapPoint } from './path-snap.ts';
import { type PathSnap, type ShortestPaths, shortestPaths } from './shortest-paths.ts';
import { walkOf } from './way-between.ts';
import { alongPath, arrivedAt, factsOfWays, isStepFree, NO_WAY_YET, type WayFacts, withLines } from './way-facts.ts';

/** The drawn paths of all waters as one net, and the ways on it. The steps of a peg's own bank are the last of its way. */
export interface VenueWalks {
  readonly graph: PathGraph;
  /** Stretches of path below an overhead line. */
  readonly below: ReadonlySet<PathEdge>;
  /**
   * The shortest way from each car park that the paths join to the peg, the shortest first; where that passes an overhead line,
   * the shortest clear of them all as well.
   */
  readonly walksTo: (peg: Peg) => readonly Walk[];
  /**
   * The shortest way from any car park on paths all of which state that they have no step, or else on paths none of which
   * states one; null where there is neither.
   */
  readonly stepFreeWalkTo: (peg: Peg) => Walk | null;
}

/** All ways from one car park over the paths that may be used. */
interface WaysFrom {
  readonly carPark: MapPlace;
  readonly start: PathSnap;
  /** Lines near the step from the car park to the paths. */
  readonly startLines: readonly number[];
  readonly ways: ShortestPaths;
  readonly factsAt: (node: number) => WayFacts;
}

type Usable = (edge: PathEdge) => boolean;
type LinesNear = (a: PlanePoint, b: PlanePoint) => readonly number[];

/** Joins the paths of a venue's waters and walks them from every car park. */
export function venueWalks(
  waters: readonly Water[],
  rule: StandOffRule,
  toPlane: (position: LatLng) => PlanePoint,
): VenueWalks {
  const paths = waters.flatMap((water) => water.map.paths);
  const graph = pathGraph(paths, toPlane);
  const lines = linesToPass(overheadLinesOf(waters), rule);
  const near = linesNear(lines, toPlane);
  const nearEdge = memoised((e: number) => near(...endsOf(graph, e)));
  const carParks = waters.flatMap((water) => water.map.places).filter(({ kind }) => kind === 'car-park');
  const waysFrom = (usable: Usable): WaysFrom[] =>
    carParks.flatMap((carPark) => {
      const at = toPlane(carPark.at);
      const start = pathSnapOf(graph, at, usable);
      if (start === null) return [];
      const ways = shortestPaths(graph, [start], usable);
      const first = snapPoint(graph, start);
      const { path } = graph.edges[start.edge]!;
      const startLines = near(at, first);
      const atStart = (node: number) =>
        alongPath(withLines(NO_WAY_YET, startLines), path, [first, graph.nodes[node]!], near);
      return [{ carPark, start, startLines, ways, factsAt: factsOfWays(graph, ways, atStart, nearEdge) }];
    });
  const walksOver = (usable: Usable): ((peg: Peg) => readonly Walk[]) => {
    const from = waysFrom(usable);
    return (peg) => {
      const at = toPlane(peg.at);
      const there = pathSnapOf(graph, at, usable);
      if (there === null) return [];
      const stepLines = near(at, snapPoint(graph, there));
      return from
        .flatMap((ways) => walkTo(graph, ways, there, near, stepLines) ?? [])
        .map(({ carPark, metres, facts }) => walkOf({ metres, facts }, carPark.name, peg.bank?.steps ?? 0, lines))
        .sort((a, b) => a.distanceMetres - b.distanceMetres);
    };
  };
  const overAll = walksOver(() => true);
  const below = new Set(graph.edges.filter((_, edge) => nearEdge(edge).length > 0));
  const clearOfLines = walksOver((edge) => !below.has(edge));
  /** The shortest from each car park, and clear ones beside those that pass a line. */
  const withClear = (peg: Peg): readonly Walk[] => {
    const walks = overAll(peg);
    const passing = new Set(walks.filter(isUnderLine).map(({ from }) => from));
    if (passing.size === 0) return walks;
    const clear = clearOfLines(peg).filter((walk) => passing.has(walk.from) && !isUnderLine(walk));
    return [...walks, ...clear].sort((a, b) => a.distanceMetres - b.distanceMetres);
  };
  const withoutKnownStep = walksOver(({ path }) => isStepFree(path) !== false);
  const surelyStepFree = walksOver(({ path }) => isStepFree(path) === true);
  const stepFreeWalksTo = (peg: Peg): readonly Walk[] => {
    const sure = surelyStepFree(peg);
    return sure.length > 0 ? sure : withoutKnownStep(peg);
  };
  return {
    graph,
    below,
    walksTo: (peg) => {
      const walks = withClear(peg);
      if (walks.every((walk) => walk.stepFree !== false) || (peg.bank?.steps ?? 0) > 0) return walks;
      const free = new Map(stepFreeWalksTo(peg).map((walk) => [walk.from, walk.distanceMetres]));
      return walks.map((walk) => {
        const stepFreeMetres = walk.stepFree === false ? free.get(walk.from) : undefined;
        return stepFreeMetres === undefined ? walk : { ...walk, stepFreeMetres };
      });
    },
    stepFreeWalkTo: (peg) => stepFreeWalksTo(peg)[0] ?? null,
  };
}

/** The way to a snap and what it is like; null where no way leads. */
function walkTo(
  graph: PathGraph,
  { carPark, start, startLines, ways, factsAt }: WaysFrom,
  there: PathSnap,
  near: LinesNear,
  stepLines: readonly number[],
): { readonly carPark: MapPlace; readonly metres: number; readonly facts: WayFacts } | null {
  const arrival = arrivalAt(graph, ways, [start], there);
  if (arrival === null) return null;
  const isAlongOneEdge = arrival.node === -1;
  const from = isAlongOneEdge ? snapPoint(graph, start) : graph.nodes[arrival.node]!;
  const before = isAlongOneEdge ? withLines(NO_WAY_YET, startLines) : factsAt(arrival.node);
  const { path } = graph.edges[there.edge]!;
  const facts = arrivedAt(alongPath(before, path, [from, snapPoint(graph, there)], near), path);
  return { carPark, metres: arrival.metres, facts: withLines(facts, stepLines) };
}

function isUnderLine({ underLines }: Walk): boolean {
  return underLines.length > 0;
}

function endsOf({ nodes, edges }: PathGraph, edge: number): readonly [PlanePoint, PlanePoint] {
  const { from, to } = edges[edge]!;
  return [nodes[from]!, nodes[to]!];
}

function memoised<T>(compute: (key: number) => T): (key: number) => T {
  const known = new Map<number, T>();
  return (key) => {
    const found = known.get(key) ?? compute(key);
    known.set(key, found);
    return found;
  };
}
