import { addDays, type Day, daysBetween, monthOf } from './day.ts';

/** Half-years of a bank: it grows from April to September and rests for the other six months. */
export type GrowthHalf = 'growing' | 'resting';

/** The days on which one peg was cut. */
export interface CutHistory {
  readonly peg: string;
  /** In order of time. */
  readonly cuts: readonly Day[];
}

/** When the next cut of a peg is due, with its spread. */
export interface CutForecast {
  readonly peg: string;
  readonly lastCut: Day;
  readonly dueOn: Day;
  /** Four times in five it should fall between these. */
  readonly earliest: Day;
  readonly latest: Day;
  /** Intervals of this peg's own behind it; 0 means the venue's usual alone. */
  readonly ownIntervals: number;
}

interface HalfYearUsual {
  /** Mean of the log interval, in log days. */
  readonly mean: number;
  /** Variance of a log interval about its peg's own mean. */
  readonly within: number;
  /** Variance of pegs' means about the venue's. */
  readonly between: number;
}

/** Without two intervals to learn a spread from, one is taken as a third either way. */
const USUAL_VARIANCE = Math.log(4 / 3) ** 2;
/** Normal quantile for an 80% interval. */
const EIGHTY_PERCENT = 1.2815515655446004;

/** The half-year a day lies in (northern hemisphere, common practice, no source). */
export function growthHalf(day: Day): GrowthHalf {
  const month = monthOf(day);
  return month >= 4 && month <= 9 ? 'growing' : 'resting';
}

/**
 * Forecasts the next cut of every peg that was cut at least once. Intervals between cuts are taken on the log scale,
 * apart for the half-year in which they began; a peg's own mean is shrunk towards the venue's by the usual normal-normal
 * rule (Efron and Morris 1975), with the variances from the one-way analysis of variance. The spread is that of a new
 * interval: the peg's own uncertainty and the scatter from one interval to the next. Pegs without any interval to learn
 * from anywhere in the venue are left out: nothing is guessed.
 */
export function forecastCuts(histories: readonly CutHistory[]): readonly CutForecast[] {
  const usual: Record<GrowthHalf, HalfYearUsual | null> = {
    growing: usualOf(histories, 'growing'),
    resting: usualOf(histories, 'resting'),
  };
  return histories.flatMap((history) => {
    const lastCut = history.cuts.at(-1);
    if (lastCut === undefined) return [];
    const half = growthHalf(lastCut);
    const venue = usual[half];
    if (venue === null) return [];
    const own = logIntervals(history, half);
    // Precision of the venue's mean as a guess for this peg, against that of the peg's own intervals.
    const weight = venue.between <= 0 ? 0 : venue.between / (venue.between + venue.within / Math.max(own.length, 1));
    const mean = own.length === 0 ? venue.mean : venue.mean + weight * (average(own) - venue.mean);
    const uncertainty = own.length === 0 ? venue.between : venue.between * (1 - weight);
    const spread = EIGHTY_PERCENT * Math.sqrt(venue.within + uncertainty);
    const after = (logDays: number) => addDays(lastCut, Math.round(Math.exp(logDays)));
    return [
      {
        peg: history.peg,
        lastCut,
        dueOn: after(mean),
        earliest: after(mean - spread),
        latest: after(mean + spread),
        ownIntervals: own.length,
      },
    ];
  });
}

function logIntervals(history: CutHistory, half: GrowthHalf): readonly number[] {
  return history.cuts.slice(1).flatMap((day, index) => {
    const before = history.cuts[index] as Day;
    const days = daysBetween(before, day);
    return days > 0 && growthHalf(before) === half ? [Math.log(days)] : [];
  });
}

/** One-way analysis of variance over the pegs' log intervals; null where there is none. */
function usualOf(histories: readonly CutHistory[], half: GrowthHalf): HalfYearUsual | null {
  const groups = histories.map((history) => logIntervals(history, half)).filter((group) => group.length > 0);
  const all = groups.flat();
  if (all.length === 0) return null;
  const mean = average(all);
  const freedomWithin = all.length - groups.length;
  const squaresWithin = sum(groups.map((group) => sum(group.map((value) => (value - average(group)) ** 2))));
  const within = freedomWithin > 0 ? Math.max(squaresWithin / freedomWithin, 1e-4) : USUAL_VARIANCE;
  if (groups.length < 2) return { mean, within, between: USUAL_VARIANCE };
  const squaresBetween = sum(groups.map((group) => group.length * (average(group) - mean) ** 2));
  const size = (all.length - sum(groups.map((group) => group.length ** 2)) / all.length) / (groups.length - 1);
  const between = Math.max((squaresBetween / (groups.length - 1) - within) / size, 0);
  return { mean, within, between };
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}

function average(values: readonly number[]): number {
  return sum(values) / values.length;
}
