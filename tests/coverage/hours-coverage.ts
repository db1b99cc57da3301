import { type HourBag, hourShares } from '../../src/ratings/hour-shares.ts';
import { type Chance, seededChance } from '../demo/chance.ts';

/** What the simulated days are drawn about: fish come late. */
export const HOURS_TRUTH: readonly number[] = [0.1, 0.1, 0.15, 0.25, 0.4];

/** Numbers of matches logged by the hour: the fewest with an interval, the fewest that are not thin, and many. */
export const HOURS_MATCHES = [4, 8, 16] as const;

/** How often the intervals of "when the fish came" held the truth over simulated waters. */
export interface HoursCoverage {
  readonly share: number;
  /** Standard error, the waters being what was drawn anew. */
  readonly error: number;
  /** By hour, how far the mean of all waters lies from the truth. */
  readonly leans: readonly number[];
}

/** Simulates waters with so many matches of one to six bags each, whose days differ and whose bags differ within a day. */
export function hoursCoverage(matches: number, waters: number): HoursCoverage {
  const chance = seededChance(11);
  const told = Array.from({ length: waters }, (_, water) => hourShares(simulatedBags(matches, chance), water));
  const shares = told.map(
    (hours) =>
      hours.filter(({ interval }, i) => interval![0] <= HOURS_TRUTH[i]! && HOURS_TRUTH[i]! <= interval![1]).length /
      hours.length,
  );
  const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
  const share = mean(shares);
  return {
    share,
    error: Math.sqrt(mean(shares.map((one) => (one - share) ** 2)) / (waters - 1)),
    leans: HOURS_TRUTH.map((truth, hour) => mean(told.map((hours) => hours[hour]!.share)) - truth),
  };
}

/** The bags of so many matches. */
export function simulatedBags(matches: number, chance: Chance): readonly HourBag[] {
  return Array.from({ length: matches }, (_, index) => {
    const day = scattered(HOURS_TRUTH, 20, chance);
    return Array.from({ length: chance.whole(1, 6) }, () => {
      const grams = chance.between(500, 20_000);
      return { match: `m${index}`, gramsByHour: scattered(day, 100, chance).map((share) => share * grams) };
    });
  }).flat();
}

/** Shares that scatter about others without leaning (gamma draws of whole shape, scaled: a Dirichlet distribution). */
function scattered(shares: readonly number[], concentration: number, chance: Chance): readonly number[] {
  const drawn = shares.map((share) => {
    const shape = Math.max(1, Math.round(share * concentration));
    return Array.from({ length: shape }, () => -Math.log(1 - chance.uniform())).reduce((sum, value) => sum + value, 0);
  });
  const total = drawn.reduce((sum, value) => sum + value, 0);
  return drawn.map((value) => value / total);
}
