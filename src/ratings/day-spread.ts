import type { LatentFit } from './engine/latent-model.ts';
import { normalCdf, normalDensity } from './engine/normal-cdf.ts';
import { normalQuantile } from './engine/normal-quantile.ts';
import { quantile } from './quantile.ts';
import { TERM } from './rating-model.ts';

/** How days lie about what their water and month lead one to expect: as many equally likely departures, log scale. */
export type DaySpread = readonly number[];

const NODES = 15;
/** Fewer days than this show no shape: they are taken as normal. */
const MIN_DAYS = 20;

/**
 * The days of a log as they were, brought to the spread of days that the model found. Days are seldom normal: a few that hardly
 * feed would make a normal spread so wide, and its middle so low, that every ordinary day beat what was promised.
 */
export function daySpread(fit: LatentFit): DaySpread {
  const sd = fit.sd[TERM.event] ?? 0;
  const at = Array.from({ length: NODES }, (_, k) => (k + 0.5) / NODES);
  const days = sd > 0 ? [...fit.effects(TERM.event)] : [];
  if (days.length < MIN_DAYS) return at.map((probability) => sd * normalQuantile(probability));
  const mean = days.reduce((sum, day) => sum + day, 0) / days.length;
  const spread = Math.sqrt(days.reduce((sum, day) => sum + (day - mean) ** 2, 0) / days.length);
  // Modes lie a little nearer to nothing than days do.
  const stretch = spread > 0 ? Math.min(1.5, sd / spread) : 1;
  return at.map((probability) => stretch * (quantile(days, probability) - mean));
}

/** Chance of a value at or below `value`, of a day that is one of these and a scatter about it. */
export function chanceBelow(days: DaySpread, mean: number, sd: number, value: number): number {
  return days.reduce((sum, day) => sum + normalCdf((value - mean - day) / sd), 0) / days.length;
}

/** The value below which such a value lies with a probability: Newton's method between bounds that close in. */
export function valueAt(days: DaySpread, mean: number, sd: number, probability: number): number {
  let low = mean + Math.min(...days) - 9 * sd;
  let high = mean + Math.max(...days) + 9 * sd;
  let value = mean + quantile(days, probability);
  for (let step = 0; step < 60; step++) {
    const off = chanceBelow(days, mean, sd, value) - probability;
    if (off > 0) high = value;
    else low = value;
    const density = days.reduce((sum, day) => sum + normalDensity((value - mean - day) / sd), 0) / days.length / sd;
    const next = value - off / density;
    const moved = next > low && next < high ? next : 0.5 * (low + high);
    if (Math.abs(moved - value) < 1e-7 * sd) return moved;
    value = moved;
  }
  return value;
}
