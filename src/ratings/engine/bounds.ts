/** True where at least one bound is finite. */
export function isInformative(lower: number, upper: number): boolean {
  return Number.isFinite(lower) || Number.isFinite(upper);
}

/** A value to stand for each row before anything is known: the middle of its bounds, or the one that is finite. */
export function typicalValue(lower: number, upper: number): number {
  if (Number.isFinite(lower)) return Number.isFinite(upper) ? 0.5 * (lower + upper) : lower;
  return Number.isFinite(upper) ? upper : 0;
}
