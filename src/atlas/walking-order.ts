import { type PegRound, pegRound, walkingDistances } from '../ground/peg-round.ts';
import type { Atlas } from './atlas.ts';

const rounds = new WeakMap<Atlas, Map<string, PegRound>>();

/**
 * The pegs of a water in walking order, from the car park that makes the round shortest: the order of the bank round, its
 * map and its paper sheet. Worked out once a build.
 */
export function roundOfWater(atlas: Atlas, waterId: string): PegRound {
  const known = rounds.get(atlas) ?? new Map<string, PegRound>();
  rounds.set(atlas, known);
  const round = known.get(waterId) ?? workOutRound(atlas, waterId);
  known.set(waterId, round);
  return round;
}

function workOutRound(atlas: Atlas, waterId: string): PegRound {
  const maps = atlas.venue.waters.map(({ map }) => map);
  const carParks = maps.flatMap(({ places }) => places).filter(({ kind }) => kind === 'car-park');
  const measure = walkingDistances(maps.flatMap(({ paths }) => paths));
  return pegRound(atlas.pegsByWater.get(waterId) ?? [], carParks, measure);
}
