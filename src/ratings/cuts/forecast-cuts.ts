import { addDays, type Day, type Month } from '../../domain/day.ts';
import { normalCdf } from '../engine/normal-cdf.ts';
import { type BankHistory, type CutSpell, cutSpells, openingSpell } from './cut-spells.ts';
import { type CutUsual, dot, type KnownBank, learnCutUsual, logGrowth, product } from './cut-usual.ts';
import { type GrowthDays, growthAfter, growthOf } from './growth-days.ts';
import { lookDays } from './look-days.ts';
import { learnWidths, type WidthForecast } from './width-forecast.ts';

/** When the next cut of a peg is due, given that it was not cut by the present. */
export interface CutForecast {
  readonly peg: string;
  readonly lastCut: Day;
  /** The bank needs it as likely before as after; it may lie in the nesting months, when nobody cuts, or have gone by unseen. */
  readonly dueOn: Day;
  /** Four times in five it is made between these: on the first walk after it is due, and in no nesting month. */
  readonly earliest: Day;
  readonly latest: Day;
  /** Ended intervals of this peg's own behind it; 0 means the venue's usual alone. */
  readonly ownIntervals: number;
  /** Whether a width measured since the last cut counts. */
  readonly isMeasured: boolean;
  /** It has gone without a cut for longer than nine in ten intervals would. */
  readonly isLate: boolean;
}

/** No forecast looks further ahead. */
const FARTHEST_DAYS = 7300;
/** Parts that could move no quantile by a day are left out. */
const MIN_SHARE = 1e-3;
const MIN_WEIGHT = 1e-4;

/** One way the unfinished interval may go: log-normal, with a weight. */
interface Way {
  readonly weight: number;
  readonly restingShare: number;
  readonly mean: number;
  readonly sd: number;
}

/**
 * Forecasts the next cut of every peg that was cut at least once. What is known of a venue's banks and of the peg's own
 * is weighed (`learnCutUsual`), a width measured since the last cut is joined to it by the usual rule for two normal
 * pieces of knowledge, and what would have been cut by now is taken off: the peg was not. Pegs of a
 * venue where no interval has ended are left out: nothing is guessed.
 * @param today the present: the records are taken as whole up to it
 */
export function forecastCuts(
  histories: readonly BankHistory[],
  today: Day,
  nestingMonths: readonly Month[],
): readonly CutForecast[] {
  const looksAt = lookDays(histories, today, nestingMonths);
  const banks = histories.map((history) => {
    const looks = looksAt?.(history) ?? null;
    const opening = openingSpell(history, today, looks);
    return { peg: history.peg, opening, spells: cutSpells(history, today, looks) };
  });
  const known = banks.filter(({ spells }) => spells.length > 0);
  // A bank that was never cut is told no day, but tells of the venue's usual.
  const usual = learnCutUsual(banks);
  if (usual === null) return [];
  const all = known.flatMap(({ spells }) => spells);
  const widths = new Map(
    [...new Set(usual.behaviours.map(({ restingShare }) => restingShare))].map((share) => [
      share,
      learnWidths(all, share),
    ]),
  );
  return known.map((bank) => {
    const { peg, spells } = bank;
    const present = spells.at(-1) as CutSpell;
    const widthOf = (share: number) => widths.get(share)?.(present) ?? null;
    const ways = waysOf(bank, usual, widthOf);
    const dayBy = endOfSpell(ways, present);
    return {
      peg,
      lastCut: present.from,
      dueOn: dayBy(0.5),
      earliest: dayBy(0.1),
      latest: dayBy(0.9),
      ownIntervals: spells.filter(({ isEnded }) => isEnded).length,
      isMeasured: [...widths.values()].some((width) => width(present) !== null),
      isLate: lastsBeyond(ways, present.uncutUntil) < 0.1,
    };
  });
}

function waysOf(
  bank: KnownBank,
  { behaviours, nodes, spreads, weights, likelihoodsOf }: CutUsual,
  widthOf: (restingShare: number) => WidthForecast | null,
): readonly Way[] {
  const ways = behaviours.flatMap((behaviour, index): readonly Way[] => {
    const { restingShare, scatter } = behaviour;
    const weightOf = weights[index] as Float64Array;
    if (weightOf.reduce((a, b) => a + b, 0) < MIN_WEIGHT) return [];
    const [ended, unfinished] = likelihoodsOf(bank, index);
    const whole = product(ended, unfinished);
    const shares = new Float64Array(nodes.length);
    spreads.forEach((spread, at) => {
      const weight = weightOf[at] as number;
      if (weight < MIN_WEIGHT / 10) return;
      const factor = weight / Math.max(dot(spread, whole), 1e-300);
      for (let node = 0; node < nodes.length; node += 1) {
        shares[node] = (shares[node] as number) + factor * (spread[node] as number);
      }
    });
    const width = widthOf(restingShare);
    return nodes.map((mean, node) =>
      joined({ weight: (shares[node] as number) * (ended[node] as number), restingShare, mean, sd: scatter }, width),
    );
  });
  const most = ways.reduce((a, { weight }) => Math.max(a, weight), 0);
  return ways.filter(({ weight }) => weight > MIN_SHARE * most);
}

/** Two normal pieces of knowledge of one figure: the precisions add up, and the way counts by how well they agree. */
function joined(way: Way, width: WidthForecast | null): Way {
  if (width === null) return way;
  const own = way.sd ** 2;
  const both = own + width.variance;
  const agreement = Math.exp((-0.5 * (width.logGrowth - way.mean) ** 2) / both) / Math.sqrt(both);
  return {
    ...way,
    weight: way.weight * agreement,
    mean: (way.mean * width.variance + width.logGrowth * own) / both,
    sd: Math.sqrt((own * width.variance) / both),
  };
}

/** The share of the ways in which the interval lasts beyond some days of growth. */
function lastsBeyond(ways: readonly Way[], days: GrowthDays): number {
  let beyond = 0;
  let total = 0;
  // Ways of one share follow each other.
  let share = Number.NaN;
  let log = 0;
  for (const { weight, restingShare, mean, sd } of ways) {
    if (restingShare !== share) {
      share = restingShare;
      log = logGrowth(growthOf(days, share));
    }
    beyond += weight * normalCdf((mean - log) / sd);
    total += weight;
  }
  return beyond / total;
}

/** The day by which an interval that has not ended by its last look ends with some chance. */
function endOfSpell(ways: readonly Way[], { from, uncutUntil }: CutSpell): (chance: number) => Day {
  const growth = growthAfter(from);
  const now = lastsBeyond(ways, uncutUntil);
  const start = uncutUntil.growing + uncutUntil.resting;
  // Searches for several chances begin alike.
  const known = new Map<number, number>();
  const endedBy = (days: number): number => {
    const chance = known.get(days) ?? 1 - lastsBeyond(ways, growth(days)) / now;
    known.set(days, chance);
    return chance;
  };
  return (chance) => {
    let low = start;
    let high = start + FARTHEST_DAYS;
    while (high - low > 1) {
      const middle = Math.floor((low + high) / 2);
      if (endedBy(middle) < chance) low = middle;
      else high = middle;
    }
    return addDays(from, high);
  };
}
