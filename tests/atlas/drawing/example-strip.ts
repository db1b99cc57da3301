import type { StripPeg } from '../../../src/atlas/drawing/strip-peg.ts';

const WORTH = { value: 1.2, low: 0.9, high: 1.6, evidence: 'fair' as const };

/** A peg of a strip of bank, open and plumbed, 15 m from the next. */
export function exampleStripPeg(peg: string, own: Partial<StripPeg> = {}): StripPeg {
  return {
    peg,
    href: `/pit/${peg}/`,
    label: `Peg ${peg}`,
    closed: false,
    depthsMetres: [0.6, 1.2, 1.5, 1.6],
    figure: '1.50',
    hazards: [],
    features: [],
    worths: Array.from({ length: 12 }, () => WORTH),
    gapMetres: 15,
    ...own,
  };
}
