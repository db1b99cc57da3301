import type { ForecastEvent } from './forecast-score.ts';
import type { Backtest } from './ratings.ts';

/** Fewer sessions whose angler was known before say nothing of a draw. */
const MIN_SESSIONS = 30;

/**
 * Whether better anglers drew better pegs: within the events of a year, what the years before said of the angler beside what they said
 * of the peg, so that no luck of the day is in both. Under a lottery the sum of products has mean 0 and, by permutation, the
 * variance S(angler) S(peg) / (n − 1) of each event (Pitman, Journal of the Royal Statistical Society Supplement 4, 1937).
 */
export function drawBalance(events: readonly ForecastEvent[]): NonNullable<Backtest['balance']> | null {
  let [sum, variance, anglersSquared, pegsSquared, count] = [0, 0, 0, 0, 0];
  for (const { forecasts } of events) {
    const known = forecasts.flatMap(({ logWorth, angler }) => (angler == null ? [] : [{ peg: logWorth, angler }]));
    if (known.length < 2) continue;
    const mean = (of: (each: (typeof known)[number]) => number) =>
      known.reduce((all, each) => all + of(each), 0) / known.length;
    const [angler, peg] = [mean((each) => each.angler), mean((each) => each.peg)];
    let [product, a, p] = [0, 0, 0];
    for (const each of known) {
      product += (each.angler - angler) * (each.peg - peg);
      a += (each.angler - angler) ** 2;
      p += (each.peg - peg) ** 2;
    }
    sum += product;
    variance += (a * p) / (known.length - 1);
    anglersSquared += a;
    pegsSquared += p;
    count += known.length;
  }
  if (count < MIN_SESSIONS || !(variance > 0)) return null;
  return { sessions: count, correlation: sum / Math.sqrt(anglersSquared * pegsSquared), z: sum / Math.sqrt(variance) };
}
