import { placesBy } from './places.ts';
import { countedGrams, type WeighedIn } from './weighed-in.ts';

/**
 * How a club counts points in a section. All of it is common practice of clubs, no source; the match's file says which.
 */
export interface PointsRule {
  /** `low`: the section winner has 1 and the least points win. `high`: the winner has as many as the section has pegs. */
  readonly count: 'low' | 'high';
  /** Of equal weights: `share` the mean of the places they take up, or `same`: all have the better place. */
  readonly ties: 'share' | 'same';
  /** Without a weight (blank, DNW): `share` like any tie, or `last`: the points of the last place of the section. */
  readonly noWeight: 'share' | 'last';
}

/** Points of each peg, in the order given; who was absent or disqualified has one place behind the last. */
export function sectionPoints(weighed: readonly WeighedIn[], rule: PointsRule): readonly number[] {
  const points = new Map<WeighedIn, number>();
  for (const section of Map.groupBy(weighed, (row) => row.section).values()) {
    const counted = section.filter((row) => countedGrams(row) !== null);
    const places = placesBy(counted, (a, b) => countedGrams(b)! - countedGrams(a)!);
    const placeOf = new Map(counted.map((row, i) => [row, places[i]!]));
    for (const row of section) {
      const own = placeOf.get(row);
      const low =
        own === undefined
          ? section.length + 1
          : countedGrams(row) === 0 && rule.noWeight === 'last'
            ? section.length
            : rule.ties === 'share'
              ? own.shared
              : own.place;
      points.set(row, rule.count === 'low' ? low : section.length + 1 - low);
    }
  }
  return weighed.map((row) => points.get(row)!);
}
