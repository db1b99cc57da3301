import type { Day } from '../domain/day.ts';
import { type PegKey, pegKey } from '../domain/peg.ts';
import { featuresOn, groundOn } from '../domain/stand.ts';
import type { LinearCombination } from './engine/latent-model.ts';
import type { RatedPeg, RatedVenue } from './rated-venue.ts';
import { type RatingModel, TERM } from './rating-model.ts';

type Effect = LinearCombination['effects'][number];

/** Worth of a model as weighed sums of its effects; what is compared with the same mean shares one object. */
export interface WorthCombinations {
  /** A peg's own effect and its features', less the mean of the same over its water; over the year where `position` is null. */
  readonly ofPeg: (peg: RatedPeg, position: number | null) => LinearCombination;
  /** The same of a stand as it was on a day, against today's mean: its ground and features of then. */
  readonly ofPegOn: (peg: RatedPeg, day: Day, position: number | null) => LinearCombination;
  /** A feature's effect at a position, times what makes it a worth. */
  readonly ofFeature: (feature: string, position: number) => LinearCombination;
  /** The mean over a water's pegs of their own effect and their features'. */
  readonly meanOf: (water: string, position: number | null) => LinearCombination;
}

/** The contrasts that a venue's worths are made of. The season's part sums to zero over the year, so a yearly worth has none. */
export function worthCombinations(venue: RatedVenue, model: RatingModel): WorthCombinations {
  const pegsOf = Map.groupBy(venue.pegs, ({ water }) => water);
  const means = new Map<string, LinearCombination>();
  const meanOf = (water: string, position: number | null) => {
    const key = `${water} ${position}`;
    const known = means.get(key);
    if (known !== undefined) return known;
    const mean = waterMean(pegsOf.get(water) ?? [], position, model);
    means.set(key, mean);
    return mean;
  };
  return {
    ofPeg: (peg, position) => ({ effects: pegEffects(now(peg), position, model), minus: meanOf(peg.water, position) }),
    ofPegOn: (peg, day, position) => ({
      effects: pegEffects(
        { water: peg.water, ground: groundOn(peg, day), features: featuresOn(peg, day) },
        position,
        model,
      ),
      minus: meanOf(peg.water, position),
    }),
    ofFeature: (feature, position) => ({
      effects: featureEffects(feature, position, model.shares.contrastOf(feature), model),
    }),
    meanOf,
  };
}

/** A peg of some day: the name of what it fishes into (`groundOn`) and its features. */
interface PegOfDay {
  readonly water: string;
  readonly ground: PegKey;
  readonly features: readonly string[];
}

function now({ water, peg, features }: RatedPeg): PegOfDay {
  return { water, ground: pegKey(water, peg), features };
}

function pegEffects(peg: PegOfDay, position: number | null, model: RatingModel): Effect[] {
  const own = { term: TERM.peg, column: model.pegColumns.get(peg.ground)!, weight: 1 };
  return [
    own,
    ...yearOfPeg(peg, model),
    ...[...new Set(peg.features)]
      .filter((feature) => model.shares.shareOf(peg.water, feature) < 1)
      .flatMap((feature) => featureEffects(feature, position, 1, model)),
  ];
}

/** What a peg is worth speaks of now: of the last year, where years differ. */
function yearOfPeg(peg: PegOfDay, { asked, years, pegColumns }: RatingModel): Effect[] {
  if (asked.pegYears !== true || years.count < 2) return [];
  const column = pegColumns.get(peg.ground)! * years.count + years.count - 1;
  return [{ term: TERM.pegYear, column, weight: 1 }];
}

function featureEffects(feature: string, position: number | null, weight: number, model: RatingModel): Effect[] {
  const column = model.featureColumns.get(feature);
  if (column === undefined) return [];
  const level = { term: TERM.feature, column, weight };
  if (position === null) return [level];
  const wave = model.season.waves?.[position] ?? [];
  return [
    level,
    { term: TERM.season, column: column * model.season.positions + position, weight },
    ...wave.map((part, k) => ({ term: TERM.wave, column: 2 * column + k, weight: weight * part })),
  ];
}

function waterMean(pegs: readonly RatedPeg[], position: number | null, model: RatingModel): LinearCombination {
  const sums = new Map<string, Effect>();
  for (const peg of pegs) {
    for (const { term, column, weight } of pegEffects(now(peg), position, model)) {
      const before = sums.get(`${term} ${column}`)?.weight ?? 0;
      sums.set(`${term} ${column}`, { term, column, weight: before + weight / pegs.length });
    }
  }
  return { effects: [...sums.values()] };
}
