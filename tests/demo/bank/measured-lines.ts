import type { MeasuredLineDistance, PegKey } from '../../../src/domain/peg.ts';

/** How far the ground below the nearest conductor lies inside the mapped centre line, and how much a wheel may differ. */
const HALF_SPREAD_METRES = 1;
const WHEEL_METRES = 0.4;

/** Pegs whose distance to the line was measured on the bank, with how. */
const MEASURED: Readonly<Record<PegKey, Pick<MeasuredLineDistance, 'measuredOn' | 'method'>>> = {
  'kiln-pool/12': { measuredOn: '2026-02-21', method: 'wheel' },
  'kiln-pool/13': { measuredOn: '2026-11-14', method: 'tape' },
  'kiln-pool/19': { measuredOn: '2026-11-14', method: 'tape' },
  'kiln-pool/20': { measuredOn: '2025-02-22', method: 'wheel' },
};

/** The distance a bailiff taped from a peg to below the nearest conductor; undefined where nobody has measured. */
export function measuredLineDistance(peg: PegKey, mappedMetres: number): MeasuredLineDistance | undefined {
  const known = MEASURED[peg];
  if (known === undefined) return undefined;
  return { distanceMetres: Math.round((mappedMetres - HALF_SPREAD_METRES + WHEEL_METRES) * 2) / 2, ...known };
}
