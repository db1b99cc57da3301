/** Where one stands among others: `place` as it is called out (1, 2, 2, 4), and the mean of the places that a tie takes up (1, 2.5, 2.5, 4). */
export interface Place {
  readonly place: number;
  readonly shared: number;
}

/**
 * Places by a comparison that is negative where the first is ahead; who compares as equal ties. In statistics the two are
 * known as competition ranking and fractional ranking.
 */
export function placesBy<T>(of: readonly T[], compare: (a: T, b: T) => number): readonly Place[] {
  return of.map((one) => {
    const ahead = of.filter((other) => compare(other, one) < 0).length;
    const level = of.filter((other) => compare(other, one) === 0).length;
    return { place: ahead + 1, shared: ahead + (level + 1) / 2 };
  });
}
