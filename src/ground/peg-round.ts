import type { MapPath } from '../domain/map.ts';
import type { LatLng } from '../domain/place.ts';
import { geodesicBetween } from './geodesy/geodesic-between.ts';
import { type DistanceTable, roundRoute } from './round-route.ts';
import { pathDistancesMetres } from './walk/path-distances.ts';

/** A place the round may begin at. */
export interface RoundStart {
  readonly name: string;
  readonly at: LatLng;
}

/** The pegs of a water in walking order. */
export interface PegRound {
  /** Where it begins and ends; null where no start is drawn: then it begins at the first peg and ends at the last. */
  readonly from: RoundStart | null;
  readonly stops: readonly {
    readonly peg: string;
    /** On foot from the stop before. */
    readonly legMetres: number;
  }[];
  /** Back to the start where there is one. */
  readonly lengthMetres: number;
  /** Whether every order was weighed, so that no shorter round exists. */
  readonly isProven: boolean;
}

/**
 * The shortest round over all pegs from the start that makes it shortest.
 * @param measure walking distances between places; straight lines unless given
 */
export function pegRound(
  pegs: readonly { readonly peg: string; readonly at: LatLng }[],
  starts: readonly RoundStart[],
  measure: Measure = straightDistances,
): PegRound {
  const places = [...starts, ...pegs].map(({ at }) => at);
  const all = starts.length === 0 ? null : measure(places);
  const from = starts.map((start, i) =>
    roundFrom(pegs, start, among(all!, [i, ...pegs.map((_, k) => starts.length + k)])),
  );
  const shortest = from.toSorted((a, b) => a.lengthMetres - b.lengthMetres)[0];
  return shortest ?? roundWithoutStart(pegs, measure);
}

/** Walking distances between places, in the order given. */
export type Measure = (places: readonly LatLng[]) => DistanceTable;

/** The distances between some of the places, in the order given. */
function among({ size, metres }: DistanceTable, places: readonly number[]): DistanceTable {
  const own = places.flatMap((i) => places.map((j) => metres[i * size + j]!));
  return { size: places.length, metres: Float64Array.from(own) };
}

function roundFrom(
  pegs: readonly { readonly peg: string; readonly at: LatLng }[],
  from: RoundStart,
  table: DistanceTable,
): PegRound {
  const { order, lengthMetres, isProven } = roundRoute(table, true);
  const stops = order.slice(1).map((place, index) => ({
    peg: pegs[place - 1]!.peg,
    legMetres: table.metres[order[index]! * table.size + place]!,
  }));
  return { from, stops, lengthMetres, isProven };
}

/** One way from the first peg, as numbered. */
function roundWithoutStart(pegs: readonly { readonly peg: string; readonly at: LatLng }[], measure: Measure): PegRound {
  const table = measure(pegs.map(({ at }) => at));
  const { order, lengthMetres, isProven } = roundRoute(table, false);
  const stops = order.map((place, index) => ({
    peg: pegs[place]!.peg,
    legMetres: index === 0 ? 0 : table.metres[order[index - 1]! * table.size + place]!,
  }));
  return { from: null, stops, lengthMetres, isProven };
}

/** Distances along the drawn paths; as the crow flies between places that no path joins. */
export function walkingDistances(paths: readonly MapPath[]): Measure {
  return (places) => {
    const { size, metres } = straightDistances(places);
    for (const [i, row] of pathDistancesMetres({ paths }, places).entries()) {
      for (const [j, walked] of row.entries()) if (walked !== null) metres[i * size + j] = walked;
    }
    return { size, metres };
  };
}

/** Distances as the crow flies. */
export function straightDistances(places: readonly LatLng[]): DistanceTable {
  const size = places.length;
  const metres = new Float64Array(size * size);
  for (let i = 0; i < size; i++) {
    for (let j = 0; j < i; j++) {
      const { distanceMetres } = geodesicBetween(places[i]!, places[j]!);
      metres[i * size + j] = distanceMetres;
      metres[j * size + i] = distanceMetres;
    }
  }
  return { size, metres };
}
