import { backtest } from '../../src/ratings/backtest.ts';
import { bagTables, fitBag, rateBag } from '../../src/ratings/bag-model.ts';
import { besideWorths } from '../../src/ratings/beside/beside-worths.ts';
import { firstLook } from '../../src/ratings/first-look.ts';
import { interval80 } from '../../src/ratings/interval.ts';
import type { BesideWorth, Evidence } from '../../src/ratings/ratings.ts';
import type { Revealed } from '../demo/log/revealed.ts';
import { trueFeatureMonths, truePars, truePegMonths, trueSpread } from '../demo/log/truth.ts';
import { trueCarp } from '../demo/log/two-humped.ts';
import { simulateFromModel } from '../demo/simulate-from-model.ts';
import type { Kind } from './kinds.ts';

/** Worth of one group counted: rows, truths inside, and the sums that slope and error are made of. */
export interface Tally {
  rows: number;
  inside: number;
  foundTruth: number;
  foundSquared: number;
  errorSquared: number;
}

/** What one simulated venue's ratings told, beside the truth. */
export interface ToldVenue {
  readonly seed: number;
  readonly tallies: Readonly<Record<string, Tally>>;
  readonly sds: readonly { readonly term: string; readonly found: number; readonly truth: number }[];
  readonly shift: number | null;
  readonly blur: number | null;
  /** How far the log asked for these terms, in standard deviations. */
  readonly pegYears: number | null;
  readonly waterYears: number | null;
  /** Terms beside the model that earned their place, where the kind has a wind; null where it has none. */
  readonly earned?: readonly string[] | null;
}

/** Simulates, rates the total bag and counts. Groups are `features` or `pegs`, then evidence word, then month; and `par` of today, then month. */
export function toldVenue({ options }: Kind, seed: number): ToldVenue {
  const { venue: drawn, truth, ground, revealed } = simulateFromModel({ ...options, seed });
  const venue = { ...drawn, ground };
  const { lesson, asked, scores, start } = firstLook(venue);
  const dnw = lesson.mechanism ?? undefined;
  const isTwoHumped = options.isTwoHumped === true;
  const hasWind = options.wind !== undefined;
  const bag = isTwoHumped ? 'carp' : 'total';
  const rated = rateBag(venue, fitBag(venue, bag, { dnw, asked }, start === null ? {} : { start }));
  const tables = bagTables(rated);
  const tallies: Record<string, Tally> = {};
  const add = (group: string, found: number, true_: number, low: number, high: number) => {
    tallies[group] ??= { rows: 0, inside: 0, foundTruth: 0, foundSquared: 0, errorSquared: 0 };
    const tally = tallies[group];
    tally.rows += 1;
    tally.inside += Math.exp(true_) >= low && Math.exp(true_) <= high ? 1 : 0;
    tally.foundTruth += found * true_;
    tally.foundSquared += found * found;
    tally.errorSquared += (found - true_) ** 2;
  };
  const spread = trueSpread(truth);
  const truths = isTwoHumped
    ? trueCarp(truth, venue.pegs, spread)
    : { features: trueFeatureMonths(truth, venue.pegs), pegs: truePegMonths(truth, venue.pegs) };
  const features = new Map(truths.features.map((row) => [`${row.feature} ${row.month}`, row.logWorth]));
  for (const row of tables.featureMonths) {
    const group = groupOf('features', row.evidence, row.month);
    add(group, row.logWorth, features.get(`${row.feature} ${row.month}`)!, row.low80, row.high80);
  }
  const pegs = new Map(truths.pegs.map((row) => [`${row.water}/${row.peg} ${row.month}`, row.logWorth]));
  for (const row of tables.pegMonths) {
    const group = groupOf('pegs', row.evidence, row.month);
    add(group, Math.log(row.worth), pegs.get(`${row.water}/${row.peg} ${row.month}`)!, row.low80, row.high80);
  }
  const pars = new Map(truePars(truth, venue.pegs).map((row) => [`${row.water} ${row.month}`, row.mean]));
  // What a part's par is made of has no one truth, and par holds the average wind and room.
  for (const { water, month, mean, sd } of isTwoHumped || hasWind ? [] : rated.days) {
    const { low80, high80 } = interval80(mean, sd);
    add(`par ${month}`, mean, pars.get(`${water} ${month}`)!, low80, high80);
  }
  if (hasWind) addBesides(besideWorths(venue, rated.fitted), revealed.truthOf, add);
  const terms = ['event', 'angler', 'peg', 'feature', 'featureMonth', 'residual'] as const;
  return {
    seed,
    tallies,
    // What a part is drawn from has other spreads.
    sds: (isTwoHumped ? [] : terms).map((term) => ({ term, found: tables.model.sd[term], truth: spread[term] })),
    shift: dnw?.shift ?? null,
    blur: dnw?.blur ?? null,
    pegYears: scores?.pegYears ?? null,
    waterYears: scores?.waterYears ?? null,
    earned: hasWind
      ? (backtest(venue)?.besides ?? []).flatMap((test) => ('isEarned' in test && test.isEarned ? [test.of] : []))
      : null,
  };
}

/** Points of curves beside the model, each held against the truth about the same average session. */
function addBesides(
  worths: readonly BesideWorth[],
  truthOf: Revealed['truthOf'],
  add: (group: string, found: number, true_: number, low: number, high: number) => void,
): void {
  for (const points of Map.groupBy(worths, ({ of, group }) => `${of} ${group}`).values()) {
    const all = points.reduce((sum, { sessions }) => sum + sessions, 0);
    const middle = points.reduce((sum, point) => sum + (point.sessions * truthOf(point)) / all, 0);
    for (const point of points) {
      const group = `beside ${point.of} ${point.evidence}`;
      add(group, Math.log(point.worth), truthOf(point) - middle, point.low80, point.high80);
    }
  }
}

function groupOf(table: 'features' | 'pegs', evidence: Evidence, month: number): string {
  return `${table} ${evidence} ${month}`;
}
