/** Three to six round marks that take in both ends (steps of 1, 2 or 5 times a power of ten). */
export function evenMarks(low: number, high: number): readonly number[] {
  // Equal ends, or nearly: a scale of their own size around them.
  const size = Math.max(Math.abs(low), Math.abs(high), 1);
  const span = high - low > 1e-9 * size ? high - low : size;
  const power = 10 ** Math.floor(Math.log10(span / 3));
  const step = [1, 2, 5, 10].map((factor) => factor * power).find((candidate) => span / candidate <= 4) ?? 10 * power;
  const first = Math.floor(low / step + 1e-9);
  const last = Math.max(Math.ceil(high / step - 1e-9), first + 1);
  return Array.from({ length: last - first + 1 }, (_, index) => Number(((first + index) * step).toPrecision(6)));
}
