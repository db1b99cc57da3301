import type { Day } from '../domain/day.ts';
import { type PegKey, pegKey } from '../domain/peg.ts';
import { featuresOn } from '../domain/stand.ts';
import type { RatedPeg, RatedVenue } from './rated-venue.ts';

/** The stands of the log by their keys: those of the guide, and those that are no longer fished. */
export function standsInLog({
  pegs,
  retired = [],
}: Pick<RatedVenue, 'pegs' | 'retired'>): ReadonlyMap<PegKey, RatedPeg> {
  return new Map([...pegs, ...retired].map((peg) => [pegKey(peg.water, peg.peg), peg]));
}

/** Whether a stand was fished from on a day: after it was made and before it was retired. */
function stoodOn({ since, retired }: RatedPeg, day: Day): boolean {
  return (since === undefined || since <= day) && (retired === undefined || day < retired.from);
}

/**
 * The features of a stand on a day that tell it from others of its water, each once. One that every stand of the water had
 * that day is part of the day's own level.
 */
export function tellingFeatures(
  venue: Pick<RatedVenue, 'pegs' | 'retired'>,
): (stand: RatedPeg, day: Day) => readonly string[] {
  const byWater = Map.groupBy(standsInLog(venue).values(), ({ water }) => water);
  const found = new Map<string, ReadonlySet<string>>();
  const sharedByAll = (water: string, day: Day) => {
    const key = `${water} ${day}`;
    const known = found.get(key);
    if (known !== undefined) return known;
    const there = (byWater.get(water) ?? []).filter((stand) => stoodOn(stand, day));
    const sets = there.map((stand) => new Set(featuresOn(stand, day)));
    const shared = new Set([...(sets[0] ?? [])].filter((feature) => sets.every((set) => set.has(feature))));
    found.set(key, shared);
    return shared;
  };
  return (stand, day) => {
    const shared = sharedByAll(stand.water, day);
    return [...new Set(featuresOn(stand, day))].filter((feature) => !shared.has(feature));
  };
}
