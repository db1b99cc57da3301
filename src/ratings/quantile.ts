/**
 * The quantile of a list by linear interpolation between its order statistics: definition 7 of Hyndman and Fan (1996),
 * the usual one of R and NumPy. The list need not be sorted and is not changed.
 * @throws RangeError on an empty list.
 */
export function quantile(values: readonly number[], probability: number): number {
  if (values.length === 0) throw new RangeError('quantile needs at least one value');
  const sorted = [...values].sort((a, b) => a - b);
  const place = (sorted.length - 1) * probability;
  const below = Math.floor(place);
  const low = sorted[below]!;
  const high = sorted[Math.min(below + 1, sorted.length - 1)]!;
  return low + (high - low) * (place - below);
}
