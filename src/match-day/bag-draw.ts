import type { PegKey } from '../domain/peg.ts';

/** What may be wrong with a peg that was pulled from the bag and typed. */
export type PulledFault = { readonly fault: 'not-in-bag' } | { readonly fault: 'pulled-before'; readonly by: string };

/** Who holds which peg. */
export type Pulled = ReadonlyMap<string, PegKey>;

/** Whether an entry may have the peg it says it pulled: one of the bag, and nobody else's. */
export function pulledFault(bag: readonly PegKey[], pulled: Pulled, entry: string, peg: PegKey): PulledFault | null {
  if (!bag.includes(peg)) return { fault: 'not-in-bag' };
  const before = [...pulled].find(([other, own]) => own === peg && other !== entry);
  return before === undefined ? null : { fault: 'pulled-before', by: before[0] };
}

/** What is still to be settled before a draw is whole: entries without a peg, and pegs that nobody pulled. */
export function openDraw(
  bag: readonly PegKey[],
  entries: readonly string[],
  pulled: Pulled,
): { readonly entries: readonly string[]; readonly pegs: readonly PegKey[] } {
  const held = new Set(entries.flatMap((entry) => pulled.get(entry) ?? []));
  return { entries: entries.filter((entry) => !pulled.has(entry)), pegs: bag.filter((peg) => !held.has(peg)) };
}
