import type { Tally, ToldVenue } from './told-venue.ts';

/** A ratio over venues with its standard error, the venues being what was drawn anew. */
export interface Ratio {
  readonly share: number;
  readonly error: number;
}

/** What all venues of a kind say together. */
export function summary(told: readonly ToldVenue[]) {
  const of = (choose: (group: string) => boolean) => {
    const perVenue = told.map(({ tallies }) =>
      summed(Object.entries(tallies).flatMap(([g, t]) => (choose(g) ? [t] : []))),
    );
    const all = summed(perVenue);
    return {
      rows: all.rows,
      coverage: ratio(
        perVenue,
        ({ inside }) => inside,
        ({ rows }) => rows,
      ),
      slope: ratio(
        perVenue,
        ({ foundTruth }) => foundTruth,
        ({ foundSquared }) => foundSquared,
      ),
      rms: Math.sqrt(all.errorSquared / all.rows),
    };
  };
  const learned = told.flatMap(({ shift, blur }) => (shift === null || blur === null ? [] : [{ shift, blur }]));
  const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
  return {
    all: of((group) => group.startsWith('features') || group.startsWith('pegs')),
    par: of((group) => group.startsWith('par')),
    features: of((group) => group.startsWith('features')),
    pegs: of((group) => group.startsWith('pegs')),
    evidence: ['thin', 'fair', 'solid'].map((word) => ({ word, ...of((group) => group.includes(` ${word} `)) })),
    besides: ['room', 'wind', 'depth', 'colour'].map((name) => ({
      name,
      ...of((group) => group.startsWith(`beside ${name}`)),
      earned: told.filter(({ earned }) => earned?.includes(name)).length,
      tested: told.filter(({ earned }) => (earned ?? null) !== null).length,
    })),
    months: Array.from({ length: 12 }, (_, m) =>
      of((group) => !group.startsWith('par') && !group.startsWith('beside') && group.endsWith(` ${m + 1}`)),
    ),
    sds: told[0]!.sds.map(({ term }, i) => ({
      term,
      found: mean(told.map(({ sds }) => sds[i]!.found)),
      truth: mean(told.map(({ sds }) => sds[i]!.truth)),
    })),
    dnw:
      learned.length === 0
        ? null
        : `learned in ${learned.length} of ${told.length}: shift ${mean(learned.map(({ shift }) => shift)).toFixed(2)}, blur ${mean(learned.map(({ blur }) => blur)).toFixed(2)}`,
  };
}

function summed(tallies: readonly Tally[]): Tally {
  const sum = { rows: 0, inside: 0, foundTruth: 0, foundSquared: 0, errorSquared: 0 };
  for (const tally of tallies) for (const key of Object.keys(sum) as (keyof Tally)[]) sum[key] += tally[key];
  return sum;
}

/** Ratio of two sums over venues, its error by the delta method (Cochran, Sampling Techniques, 1977, ch. 6). */
function ratio(venues: readonly Tally[], top: (t: Tally) => number, bottom: (t: Tally) => number): Ratio {
  const below = venues.reduce((sum, tally) => sum + bottom(tally), 0);
  const share = venues.reduce((sum, tally) => sum + top(tally), 0) / below;
  const squares = venues.reduce((sum, tally) => sum + (top(tally) - share * bottom(tally)) ** 2, 0);
  const count = venues.length;
  return { share, error: count < 2 ? Number.NaN : Math.sqrt((squares * count) / (count - 1)) / below };
}
