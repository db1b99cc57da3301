import type { PegKey } from '../domain/peg.ts';
import type { Neighbour } from './survey.ts';

/** Pegs of one line of bank, each the next on the right hand of the one before, for somebody who looks at the water. */
export interface BankRing {
  readonly pegs: readonly PegKey[];
  /** Along the bank from each to the next; of the last, back to the first. */
  readonly gapMetres: readonly number[];
}

/** The lines of bank (outline, islands) that pegs stand on, each from the first of its pegs in the order given. */
export function bankRings(
  pegs: readonly PegKey[],
  neighboursOf: (peg: PegKey) => readonly Neighbour[],
): readonly BankRing[] {
  const seen = new Set<PegKey>();
  const rings: BankRing[] = [];
  for (const first of pegs) {
    if (seen.has(first)) continue;
    const ring: PegKey[] = [];
    const gaps: number[] = [];
    for (let peg = first; !seen.has(peg); ) {
      seen.add(peg);
      ring.push(peg);
      const right = neighboursOf(peg).find(({ side }) => side === 'right');
      gaps.push(right?.gapMetres ?? Number.POSITIVE_INFINITY);
      peg = right?.peg ?? peg;
    }
    rings.push({ pegs: ring, gapMetres: gaps });
  }
  return rings;
}

/** The same line of bank with some pegs only: the gaps run past those that are left out. */
export function keptOnRing({ pegs, gapMetres }: BankRing, isKept: (peg: PegKey) => boolean): BankRing {
  const kept = pegs.flatMap((peg, i) => (isKept(peg) ? [i] : []));
  return {
    pegs: kept.map((i) => pegs[i]!),
    gapMetres: kept.map((i, k) => {
      const next = kept[k + 1] ?? kept[0]! + pegs.length;
      let metres = 0;
      for (let at = i; at < next; at++) metres += gapMetres[at % pegs.length]!;
      return metres;
    }),
  };
}

/** The ring turned so that its widest gap comes last: where a bank that has to end somewhere ends best. */
export function openedAtWidestGap({ pegs, gapMetres }: BankRing): BankRing {
  const widest = gapMetres.indexOf(Math.max(...gapMetres));
  const turn = <T>(values: readonly T[]) => [...values.slice(widest + 1), ...values.slice(0, widest + 1)];
  return { pegs: turn(pegs), gapMetres: turn(gapMetres) };
}
