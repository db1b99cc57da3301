import type { Units } from '../domain/bag.ts';
import { METRES_PER_FOOT } from '../domain/length.ts';
import type { DepthMark } from './drawing/bank-tiles.ts';

/** Round depths down to the deepest that a drawing shows, few enough to be read apart: every metre or yard, or every other. */
export function depthMarks(deepestMetres: number, { length }: Pick<Units, 'length'>): readonly DepthMark[] {
  const step = length === 'm' ? 1 : 3 * METRES_PER_FOOT;
  const wide = deepestMetres > 4 * step ? 2 * step : step;
  return Array.from({ length: Math.floor(deepestMetres / wide) }, (_, index) => {
    const depthMetres = (index + 1) * wide;
    const words = length === 'm' ? `${Math.round(depthMetres)} m` : `${Math.round(depthMetres / METRES_PER_FOOT)} ft`;
    return { depthMetres, words };
  });
}
