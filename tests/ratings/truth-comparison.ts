/** A worth as it was published beside the truth, both on the log scale. */
export interface Compared {
  readonly found: number;
  readonly truth: number;
  /** Interval in multiples of par. */
  readonly low80: number;
  readonly high80: number;
}

/** How near a table came to the truth. */
export interface Nearness {
  readonly correlation: number;
  readonly rootMeanSquareError: number;
  readonly coverage80: number;
  readonly rows: number;
}

/** Correlation with the truth, root mean square error and the share of truths inside the stated interval. */
export function nearness(rows: readonly Compared[]): Nearness {
  const mean = (value: (row: Compared) => number) => rows.reduce((sum, row) => sum + value(row), 0) / rows.length;
  const [meanFound, meanTruth] = [mean(({ found }) => found), mean(({ truth }) => truth)];
  const product = mean(({ found, truth }) => (found - meanFound) * (truth - meanTruth));
  const spread = Math.sqrt(
    mean(({ found }) => (found - meanFound) ** 2) * mean(({ truth }) => (truth - meanTruth) ** 2),
  );
  return {
    correlation: product / spread,
    rootMeanSquareError: Math.sqrt(mean(({ found, truth }) => (found - truth) ** 2)),
    coverage80: mean(({ truth, low80, high80 }) => (Math.exp(truth) >= low80 && Math.exp(truth) <= high80 ? 1 : 0)),
    rows: rows.length,
  };
}

/** The plain average of some values on the log scale, with the textbook 80% interval of a mean. */
export function rawAverage(logRatios: readonly number[]): Omit<Compared, 'truth'> {
  const count = logRatios.length;
  if (count === 0) return { found: 0, low80: 1, high80: 1 };
  const found = logRatios.reduce((sum, value) => sum + value, 0) / count;
  const squares = logRatios.reduce((sum, value) => sum + (value - found) ** 2, 0);
  const error = count < 2 ? 0 : Math.sqrt(squares / (count - 1) / count);
  return { found, low80: Math.exp(found - 1.2816 * error), high80: Math.exp(found + 1.2816 * error) };
}
