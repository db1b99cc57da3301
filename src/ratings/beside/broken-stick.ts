/**
 * A curve of straight pieces between knots as steps: step k is the share of the way from knot k to the next that a value has gone.
 * Steps that are independent make the curve a random walk along its knots; beyond the ends it is level.
 */
export function stepsAt(knots: readonly number[], value: number): number[] {
  return knots.slice(1).map((end, k) => {
    const start = knots[k]!;
    return Math.min(1, Math.max(0, (value - start) / (end - start)));
  });
}

/** The knot nearest to a value. */
export function nearestKnot(knots: readonly number[], value: number): number {
  let nearest = 0;
  knots.forEach((knot, k) => {
    if (Math.abs(knot - value) < Math.abs(knots[nearest]! - value)) nearest = k;
  });
  return nearest;
}

/** The mean of each step over some values; nothing where there are none. */
export function meanSteps(knots: readonly number[], values: readonly number[]): number[] {
  return knots.slice(1).map((_, k) => {
    const sum = values.reduce((all, value) => all + stepsAt(knots, value)[k]!, 0);
    return sum / Math.max(1, values.length);
  });
}
