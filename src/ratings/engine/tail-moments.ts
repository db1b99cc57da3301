/**
 * Ratios of successive moments of the normal upper tail. With I[k](t) = ∫ s^k exp(−s²/2 − t s) ds over s > 0, integration
 * by parts gives I[k]/I[k−1] = k / (t + I[k+1]/I[k]): Laplace's continued fraction. Every term is positive, so nothing
 * cancels, at t = 38 or at t = 1e8.
 *
 * Fills `ratios` with I[1]/I[0], I[2]/I[1], I[3]/I[2], I[4]/I[3] for t of at least 2, full double accuracy.
 *
 * Source: Laplace, Mécanique céleste IV, 1805; convergence: Abramowitz and Stegun, 26.2.14.
 */
export function tailRatiosInPlace(ratios: Float64Array, t: number): void {
  // The error falls as exp(−2 t √(2 depth)): 116 steps at t = 2, 17 in the far tail.
  let ratio = 0;
  for (let k = Math.ceil(16 + 400 / (t * t)); k >= 1; k--) {
    ratio = k / (t + ratio);
    if (k <= 4) ratios[k - 1] = ratio;
  }
}

/** Mills ratio of the upper tail, (1 − Φ(t)) / φ(t), for t of at least 2. */
export function millsRatio(t: number): number {
  let ratio = 0;
  for (let k = Math.ceil(16 + 400 / (t * t)); k >= 1; k--) ratio = k / (t + ratio);
  return 1 / (t + ratio);
}
