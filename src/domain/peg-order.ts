/** What the pegs of a water can be put in order by; a worth is that of one bag, `worth-carp`. */
export type PegOrder = 'number' | 'depth' | 'walk' | 'step-free' | `worth-${string}`;

/** What is known of a peg that an order asks for; null is not known. */
export interface OrderedPeg {
  /** As painted on the post. */
  readonly peg: string;
  /** On the day of reading. */
  readonly isClosed: boolean;
  readonly depthMetres: number | null;
  readonly walkMetres: number | null;
  readonly stepFree: boolean | null;
  /** By bag, in the month asked for. */
  readonly worths: Readonly<Record<string, number | null>>;
}

const byNumber = new Intl.Collator('en', { numeric: true });

/**
 * Pegs in the order asked for: highest worth first, deepest first, shortest walk first, step-free first. What is not
 * known stands behind what is, and a closed peg behind every open one whatever it was worth, so that no order recommends it.
 * By number nothing is recommended and every peg keeps its place on the bank.
 */
export function orderedPegs<T extends OrderedPeg>(pegs: readonly T[], order: PegOrder): readonly T[] {
  const rank = rankBy(order);
  return [...pegs].sort(
    (a, b) =>
      (order === 'number' ? 0 : Number(a.isClosed) - Number(b.isClosed) || compared(rank(a), rank(b))) ||
      byNumber.compare(a.peg, b.peg),
  );
}

/** Low comes first; null is not known. A closed peg has no rank but its number. */
function rankBy(order: PegOrder): (peg: OrderedPeg) => number | null {
  const rank = (of: (peg: OrderedPeg) => number | null) => (peg: OrderedPeg) => (peg.isClosed ? null : of(peg));
  if (order === 'walk') return rank(({ walkMetres }) => walkMetres);
  if (order === 'depth') return rank(({ depthMetres }) => (depthMetres === null ? null : -depthMetres));
  if (order === 'step-free') return rank(({ stepFree }) => (stepFree === null ? null : stepFree ? 0 : 1));
  const bag = order.replace(/^worth-/, '');
  return rank(({ worths }) => {
    const worth = worths[bag] ?? null;
    return worth === null ? null : -worth;
  });
}

function compared(a: number | null, b: number | null): number {
  if (a === null || b === null) return Number(a === null) - Number(b === null);
  return a - b;
}
