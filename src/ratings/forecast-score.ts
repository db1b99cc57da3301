import { LOWER_SHARE, UPPER_SHARE } from '../domain/interval-level.ts';
import { normalCdf } from './engine/normal-cdf.ts';
import { type TruncatedNormal, truncatedNormalInPlace } from './engine/truncated-normal.ts';
import { rankAgreement } from './rank-agreement.ts';
import type { Backtest, BacktestScore } from './ratings.ts';
import type { ModelSession } from './sessions-in-model.ts';

/** What was forecast of one session: its log bag against par, and the spread of bags about that where one is stated. */
export interface Forecast {
  readonly logWorth: number;
  readonly sd: number | null;
  /** What the past said of the angler; null or left out where it knew nothing of one. */
  readonly angler?: number | null;
}

/** One event's sessions with what was forecast of each. */
export interface ForecastEvent {
  readonly sessions: readonly ModelSession[];
  readonly forecasts: readonly Forecast[];
}

/** Stated probabilities at which calibration is shown. */
const STATED = [0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9];

/**
 * How near forecasts came to what was weighed. A forecast is of pegs, not of days: in each event what was forecast and
 * what was weighed are compared about their means.
 */
export function scoreForecasts(events: readonly ForecastEvent[]): Omit<BacktestScore, 'name'> {
  let [squares, bags, agreement, inside, stated] = [0, 0, 0, 0, 0];
  for (const event of events) {
    const weighed = event.sessions.flatMap((session, i) => (session.isCensored ? [] : [i]));
    const observed = centred(weighed.map((i) => event.sessions[i]!.logKg));
    const forecast = centred(weighed.map((i) => event.forecasts[i]!.logWorth));
    observed.forEach((value, k) => {
      squares += (value - forecast[k]!) ** 2;
    });
    bags += weighed.length;
    agreement += rankAgreement(observed, forecast);
    const reached = probabilitiesReached(event);
    for (const i of reached === null ? [] : weighed) {
      stated += 1;
      if (reached![i]!.at >= LOWER_SHARE && reached![i]!.at <= UPPER_SHARE) inside += 1;
    }
  }
  return {
    rootMeanSquareError: Math.sqrt(squares / bags),
    rankAgreement: agreement / events.length,
    coverage80: stated === 0 ? null : inside / stated,
  };
}

/**
 * Share of outcomes at or below each stated probability. A session known only as "at most this" counts by the share of
 * its possible outcomes that lie below (the non-randomised probability integral transform: Czado, Gneiting and Held, 2009).
 */
export function calibrationOf(events: readonly ForecastEvent[]): Backtest['calibration'] {
  const reached = events.flatMap((event) => probabilitiesReached(event) ?? []);
  if (reached.length === 0) return [];
  return STATED.map((stated) => {
    const below = reached.reduce(
      (sum, { at, isCensored }) => sum + (at <= stated ? 1 : isCensored ? stated / at : 0),
      0,
    );
    return { stated, happened: below / reached.length };
  });
}

interface Reached {
  /** Forecast probability of a bag at or below this one, or below its bound. */
  readonly at: number;
  readonly isCensored: boolean;
}

/** Where each outcome lies in what was forecast of it, given the level of the day; null where no spread was stated. */
function probabilitiesReached({ sessions, forecasts }: ForecastEvent): Reached[] | null {
  const sds = forecasts.flatMap(({ sd }) => sd ?? []);
  if (sds.length < sessions.length) return null;
  const level = dayLevel(sessions, forecasts, sds);
  // The level was found from the same bags, which stand a little nearer to it for that.
  const narrowed = Math.sqrt(1 - 1 / Math.max(2, sessions.length));
  return sessions.map(({ logKg, isCensored }, i) => ({
    at: normalCdf((logKg - level - forecasts[i]!.logWorth) / (sds[i]! * narrowed)),
    isCensored,
  }));
}

/** The day's level at which the event is most likely under the forecasts, by expectation and maximisation. */
function dayLevel(sessions: readonly ModelSession[], forecasts: readonly Forecast[], sds: readonly number[]): number {
  const weights = sds.map((sd) => 1 / sd ** 2);
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const levelFrom = (logKg: (i: number) => number) =>
    weights.reduce((sum, weight, i) => sum + weight * (logKg(i) - forecasts[i]!.logWorth), 0) / total;
  let level = levelFrom((i) => sessions[i]!.logKg);
  for (let step = 0; step < 200; step++) {
    const next = levelFrom((i) => {
      const { logKg, isCensored } = sessions[i]!;
      return isCensored ? meanBelow(level + forecasts[i]!.logWorth, sds[i]!, logKg) : logKg;
    });
    const moved = Math.abs(next - level);
    level = next;
    if (moved < 1e-9) break;
  }
  return level;
}

/** Mean of a normal variable known to be at most `bound`. */
function meanBelow(mean: number, sd: number, bound: number): number {
  const cut: TruncatedNormal = { logProbability: 0, mean: 0, information: 0, thirdMoment: 0, fourthMoment: 0 };
  truncatedNormalInPlace(cut, Number.NEGATIVE_INFINITY, (bound - mean) / sd);
  return mean + sd * cut.mean;
}

function centred(values: readonly number[]): number[] {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  return values.map((value) => value - mean);
}
