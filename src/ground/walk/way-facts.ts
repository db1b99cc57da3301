import type { MapPath } from '../../domain/map.ts';
import type { PlanePoint } from '../plane/plane-point.ts';
import type { WalkFact } from '../survey.ts';
import { ONE_POINT_METRES, type PathGraph } from './path-graph.ts';
import type { ShortestPaths } from './shortest-paths.ts';

/** What a way along paths is like. */
export interface WayFacts {
  /** Paths on the way that have steps, each once: a record counts the steps of a whole path, so they are all counted. */
  readonly stepped: readonly MapPath[];
  /** Steepest stated rise over run; null where no path states one. */
  readonly steepest: number | null;
  /** Null where a path does not say and none has a step. */
  readonly stepFree: boolean | null;
  /** Narrowest stated width; null where no path states one. */
  readonly narrowestMetres: number | null;
  /** What some path on the way does not state. */
  readonly notStated: readonly WalkFact[];
  /** Whether it runs along any path: off them nothing is known. */
  readonly isAlongPath: boolean;
  /** Numbers of the overhead lines the way comes near. */
  readonly lines: readonly number[];
}

export const NO_WAY_YET: WayFacts = {
  stepped: [],
  steepest: null,
  stepFree: true,
  narrowestMetres: null,
  notStated: [],
  isAlongPath: false,
  lines: [],
};

/** Whether a path has no step: as it states, or else by its count of steps; null where it says neither. */
export function isStepFree({ stepFree, steps }: MapPath): boolean | null {
  if (stepFree === false || (steps ?? 0) > 0) return false;
  return stepFree === true || steps === 0 ? true : null;
}

/** The facts of a way and a further piece of path; `lines` are those near that piece. */
export function withPath(facts: WayFacts, path: MapPath, lines: readonly number[]): WayFacts {
  const free = isStepFree(path);
  const stepped = (path.steps ?? 0) > 0 && !facts.stepped.includes(path) ? [...facts.stepped, path] : facts.stepped;
  const steepest = path.gradient === undefined ? facts.steepest : Math.max(facts.steepest ?? 0, path.gradient);
  const stepFree = facts.stepFree === false || free === false ? false : facts.stepFree === null ? null : free;
  const narrowestMetres =
    path.widthMetres === undefined
      ? facts.narrowestMetres
      : Math.min(facts.narrowestMetres ?? Number.POSITIVE_INFINITY, path.widthMetres);
  const notStated = WALK_FACTS.filter((fact) => facts.notStated.includes(fact) || isNotStated(path, fact));
  return withLines({ ...facts, stepped, steepest, stepFree, narrowestMetres, notStated, isAlongPath: true }, lines);
}

/** The facts of a way that goes on from one point to another of a path: none of the path's own where it only touches it, as where two paths meet. */
export function alongPath(
  facts: WayFacts,
  path: MapPath,
  [from, to]: readonly [PlanePoint, PlanePoint],
  linesNear: (from: PlanePoint, to: PlanePoint) => readonly number[],
): WayFacts {
  const isTouching = Math.hypot(to.x - from.x, to.y - from.y) <= ONE_POINT_METRES;
  return isTouching ? withLines(facts, linesNear(from, to)) : withPath(facts, path, linesNear(from, to));
}

/** The facts of a way that has ended beside a path: those of that path where it ran along none, since nothing else tells of it. */
export function arrivedAt(facts: WayFacts, path: MapPath): WayFacts {
  return facts.isAlongPath ? facts : withPath(facts, path, []);
}

const WALK_FACTS: readonly WalkFact[] = ['steps', 'gradient', 'width'];

function isNotStated(path: MapPath, fact: WalkFact): boolean {
  if (fact === 'steps') return isStepFree(path) === null;
  return (fact === 'gradient' ? path.gradient : path.widthMetres) === undefined;
}

/** The facts of a way that comes near further lines. */
export function withLines(facts: WayFacts, lines: readonly number[]): WayFacts {
  const added = lines.filter((line) => !facts.lines.includes(line));
  return added.length === 0 ? facts : { ...facts, lines: [...facts.lines, ...added] };
}

/**
 * The facts of the shortest way to each node, worked out once for all nodes behind it.
 * `atStart` gives those of the first piece, from the start's snap to the first node.
 */
export function factsOfWays(
  graph: PathGraph,
  ways: ShortestPaths,
  atStart: (node: number) => WayFacts,
  linesNearEdge: (edge: number) => readonly number[],
): (node: number) => WayFacts {
  const known = new Map<number, WayFacts>();
  return (node) => {
    const behind: number[] = [];
    let at = node;
    while (!known.has(at) && ways.by[at] !== -1) {
      behind.push(at);
      const edge = graph.edges[ways.by[at]!]!;
      at = edge.from === at ? edge.to : edge.from;
    }
    let facts = known.get(at) ?? atStart(at);
    known.set(at, facts);
    for (const next of behind.reverse()) {
      const e = ways.by[next]!;
      facts = withPath(facts, graph.edges[e]!.path, linesNearEdge(e));
      known.set(next, facts);
    }
    return facts;
  };
}
