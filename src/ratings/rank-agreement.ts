/**
 * Spearman's rank correlation: the correlation of ranks, ties at their middle rank. 0 where one side is all ties, for it
 * then ranks nothing.
 */
export function rankAgreement(first: readonly number[], second: readonly number[]): number {
  const [a, b] = [middleRanks(first), middleRanks(second)];
  const mean = (first.length + 1) / 2;
  let [product, squaresA, squaresB] = [0, 0, 0];
  for (let i = 0; i < a.length; i++) {
    product += (a[i]! - mean) * (b[i]! - mean);
    squaresA += (a[i]! - mean) ** 2;
    squaresB += (b[i]! - mean) ** 2;
  }
  return squaresA === 0 || squaresB === 0 ? 0 : product / Math.sqrt(squaresA * squaresB);
}

function middleRanks(values: readonly number[]): number[] {
  const order = values.map((_, i) => i).sort((i, j) => values[i]! - values[j]!);
  const ranks = new Array<number>(values.length);
  for (let from = 0; from < order.length; ) {
    let to = from;
    while (to < order.length && values[order[to]!] === values[order[from]!]) to++;
    for (let k = from; k < to; k++) ranks[order[k]!] = (from + 1 + to) / 2;
    from = to;
  }
  return ranks;
}
