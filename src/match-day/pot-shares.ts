/**
 * A sum in its smallest coin shared out by parts, all of it and in whole coins: each has its whole coins, and the coins left
 * over go to the largest remainders, the earlier first (largest remainder method, Hamilton 1792). Arithmetic only: nobody is
 * paid by this.
 */
export function sharedOut(coins: number, parts: readonly number[]): readonly number[] {
  const whole = parts.reduce((sum, part) => sum + part, 0);
  if (whole <= 0) return parts.map(() => 0);
  const exact = parts.map((part) => (coins * part) / whole);
  const shares = exact.map(Math.floor);
  const left = coins - shares.reduce((sum, share) => sum + share, 0);
  const order = [...exact.keys()].sort((a, b) => exact[b]! - shares[b]! - (exact[a]! - shares[a]!) || a - b);
  for (const i of order.slice(0, left)) shares[i] = shares[i]! + 1;
  return shares;
}

/**
 * What each of the placed has of a pot: who ties for places has them together, and they share what those places have.
 * @param places as called out, 1 first, ties with the same number
 * @param parts of the pot, the winner's first
 */
export function potShares(coins: number, places: readonly number[], parts: readonly number[]): readonly number[] {
  const byPlace = sharedOut(coins, parts);
  const paid = places.map(() => 0);
  for (const place of new Set(places)) {
    const level = places.flatMap((own, i) => (own === place ? [i] : []));
    const together = byPlace.slice(place - 1, place - 1 + level.length).reduce((sum, share) => sum + share, 0);
    const each = sharedOut(
      together,
      level.map(() => 1),
    );
    level.forEach((i, k) => {
      paid[i] = each[k]!;
    });
  }
  return paid;
}
