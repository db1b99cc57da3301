import { INTERVAL_SDS } from '../domain/interval-level.ts';

/** A worth as a multiple of par with its interval, from its mean and standard deviation on the log scale. */
export function interval80(logWorth: number, sd: number): { readonly low80: number; readonly high80: number } {
  return { low80: Math.exp(logWorth - INTERVAL_SDS * sd), high80: Math.exp(logWorth + INTERVAL_SDS * sd) };
}
