import type { NextBelow } from './even-numbers.ts';

/** A list in an order drawn by lot: every order is as likely as any other (Fisher and Yates; Durstenfeld, Comm. ACM 7, 1964, algorithm 235). */
export async function shuffled<T>(values: readonly T[], nextBelow: NextBelow): Promise<T[]> {
  const order = [...values];
  for (let i = order.length - 1; i > 0; i--) {
    const j = await nextBelow(i + 1);
    [order[i], order[j]] = [order[j]!, order[i]!];
  }
  return order;
}
