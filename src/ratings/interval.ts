/** Half-width of the central 80% of a normal distribution, in standard deviations: Φ⁻¹(0.9). */
export const NORMAL_80 = 1.2815515655446004;

/** A worth as a multiple of par with its 80% interval, from its mean and standard deviation on the log scale. */
export function interval80(logWorth: number, sd: number): { readonly low80: number; readonly high80: number } {
  return { low80: Math.exp(logWorth - NORMAL_80 * sd), high80: Math.exp(logWorth + NORMAL_80 * sd) };
}
