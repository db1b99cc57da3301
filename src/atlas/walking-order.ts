import type { PegKey } from '../domain/peg.ts';
import type { LatLng } from '../domain/place.ts';
import { type PegRound, pegRound, walkingDistances } from '../ground/peg-round.ts';
import { type Atlas, pegOf } from './atlas.ts';

interface PlacedPeg {
  readonly peg: string;
  readonly at: LatLng;
}

const rounds = new WeakMap<Atlas, Map<string, PegRound>>();

/**
 * The pegs of a water in walking order, from the car park that makes the round shortest: the order of the bank round, its
 * map and its paper sheet.
 */
export function roundOfWater(atlas: Atlas, waterId: string): PegRound {
  return roundPast(atlas, atlas.pegsByWater.get(waterId) ?? [], `water ${waterId}`);
}

/** Pegs of one water or several in walking order, by their keys: the walk past the pegs of a match. */
export function roundOfPegs(atlas: Atlas, keys: readonly PegKey[]): PegRound {
  const pegs = keys.map((key): PlacedPeg => ({ peg: key, at: pegOf(atlas, key).at }));
  return roundPast(atlas, pegs, `pegs ${keys.join(' ')}`);
}

/** Worked out once a build, since several pages ask for it. */
function roundPast(atlas: Atlas, pegs: readonly PlacedPeg[], name: string): PegRound {
  const known = rounds.get(atlas) ?? new Map<string, PegRound>();
  rounds.set(atlas, known);
  const round = known.get(name) ?? workOutRound(atlas, pegs);
  known.set(name, round);
  return round;
}

function workOutRound(atlas: Atlas, pegs: readonly PlacedPeg[]): PegRound {
  const maps = atlas.venue.waters.map(({ map }) => map);
  const carParks = maps.flatMap(({ places }) => places).filter(({ kind }) => kind === 'car-park');
  const measure = walkingDistances(maps.flatMap(({ paths }) => paths));
  return pegRound(pegs, carParks, measure);
}
