/** A place on a scale, and on which side it had to be cut off. */
export interface ScalePlace {
  readonly at: number;
  readonly cut: 'no' | 'below' | 'above';
}

/** Maps multiples of par onto a stretch of user units, evenly for equal ratios: half is as far from par as twice. */
export interface RatioScale {
  readonly low: number;
  readonly high: number;
  place(ratio: number): ScalePlace;
}

/**
 * Makes a ratio scale from `low` and `high` (multiples of par, both above 0) to the user units `from` and `to`. A ratio
 * beyond the ends is cut there and says so.
 */
export function ratioScale(low: number, high: number, from: number, to: number): RatioScale {
  const slope = (to - from) / Math.log(high / low);
  const place = (ratio: number): ScalePlace => {
    if (ratio < low) return { at: from, cut: 'below' };
    if (ratio > high) return { at: to, cut: 'above' };
    return { at: from + slope * Math.log(ratio / low), cut: 'no' };
  };
  return { low, high, place };
}
