import type { Units } from '../domain/bag.ts';
import { METRES_PER_FOOT } from '../domain/length.ts';

/** The figure on a depth contour: `1.5 m`, `5 ft`. */
export function isobathWords(depthMetres: number, unit: Units['length']): string {
  const value = unit === 'm' ? depthMetres : depthMetres / METRES_PER_FOOT;
  return `${Math.round(value * 10) / 10} ${unit}`;
}
