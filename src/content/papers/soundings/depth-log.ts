import type { Day } from '../../../domain/day.ts';
import type { LatLng } from '../../../domain/place.ts';
import type { Unread } from '../results/result-row.ts';

/** One depth as a finder, a phone or a plumb book gives it. */
export interface LoggedDepth {
  /** A position, or a peg and the distance out from it. */
  readonly at: LatLng | { readonly peg: string; readonly distanceMetres: number };
  /** In the log's own unit; null there means the log does not say which. */
  readonly depth: number;
  readonly unit: 'm' | 'ft' | null;
  readonly day: Day | null;
}

/** A log of depths in the order they were taken. */
export interface DepthLog {
  readonly file: string;
  readonly depths: readonly LoggedDepth[];
  /** Depths lie below the transducer, and nothing says how deep that hung. */
  readonly isBelowTransducer: boolean;
  readonly unread: readonly Unread[];
}

/** Positive figures of a list, least first. */
function sorted(values: readonly number[]): readonly number[] {
  return values.toSorted((a, b) => a - b);
}

/** The middle value; of an even number, the mean of the two in the middle. */
export function median(values: readonly number[]): number {
  const inOrder = sorted(values);
  const half = Math.floor(inOrder.length / 2);
  return inOrder.length % 2 === 1 ? inOrder[half]! : (inOrder[half - 1]! + inOrder[half]!) / 2;
}

const NEIGHBOURS = 4;
/** Makes a median absolute deviation a standard deviation where errors are normal (Rousseeuw and Croux, 1993). */
const NORMAL_SCALE = 1.4826;
const MAX_DEVIATIONS = 3;
/** A bed steps by this much from one ping to the next without anything being wrong. */
const MIN_JUMP_METRES = 0.25;

/**
 * Which depths of a run jump away from those around them: a fish, weed, or a lost bottom. Held against the median of nine
 * in a row, by three scaled median absolute deviations of the run. A run of fewer than nine is taken as it is.
 * @param depthsMetres in the order they were taken
 */
export function isJump(depthsMetres: readonly number[]): readonly boolean[] {
  if (depthsMetres.length < 2 * NEIGHBOURS + 1) return depthsMetres.map(() => false);
  const residuals = depthsMetres.map((depth, index) => {
    const from = Math.min(Math.max(0, index - NEIGHBOURS), depthsMetres.length - 2 * NEIGHBOURS - 1);
    return depth - median(depthsMetres.slice(from, from + 2 * NEIGHBOURS + 1));
  });
  const spread = NORMAL_SCALE * median(residuals.map(Math.abs));
  const most = Math.max(MIN_JUMP_METRES, MAX_DEVIATIONS * spread);
  return residuals.map((residual) => Math.abs(residual) > most);
}
