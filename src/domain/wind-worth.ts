/** From Beaufort's force 4 on, a moderate breeze (World Meteorological Organization, Guide to Instruments, WMO-No. 8). */
export const FRESH_FROM_METRES_PER_SECOND = 5.5;

/** Whether a month lies in the half of the year in which the water is mostly warm. */
export const isWarmMonth = (month: number): boolean => month >= 4 && month <= 9;

/** The name of what a wind's strength and the half of the year are rated by together. */
export function windGroup(isFresh: boolean, isWarm: boolean): string {
  return `${isFresh ? 'force 4 and over' : 'up to force 3'}, ${isWarm ? 'April to September' : 'October to March'}`;
}

/** A worth with its 80% interval, in multiples. */
export interface WorthRange {
  readonly worth: number;
  readonly low80: number;
  readonly high80: number;
}

/** A point of a curve by open water along the wind. */
export interface FetchWorth extends WorthRange {
  readonly fetchMetres: number;
}

/** A worth between two points of its curve, by the logarithm of the fetch; level beyond both ends. Null of an empty curve. */
export function worthAtFetch(curve: readonly FetchWorth[], fetchMetres: number): WorthRange | null {
  const after = curve.findIndex((point) => point.fetchMetres >= fetchMetres);
  const high = curve[after < 0 ? curve.length - 1 : after];
  const low = after < 0 ? high : (curve[after - 1] ?? high);
  if (high === undefined || low === undefined) return null;
  const span = Math.log(high.fetchMetres / low.fetchMetres);
  const share = span > 0 ? Math.log(fetchMetres / low.fetchMetres) / span : 0;
  const between = (of: (range: WorthRange) => number) =>
    Math.exp(Math.log(of(low)) * (1 - share) + Math.log(of(high)) * share);
  return {
    worth: between((range) => range.worth),
    low80: between((range) => range.low80),
    high80: between((range) => range.high80),
  };
}
