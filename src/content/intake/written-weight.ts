import type { Units } from '../../domain/bag.ts';
import { toPoundsOuncesDrams } from '../../domain/weight.ts';

/** A weight as the log writes it: whole drams, or grams as kilograms. */
export function writtenWeight(grams: number, unit: Units['weight']): string {
  if (unit === 'kg') return `${(Math.round(grams) / 1000).toFixed(3)} kg`;
  const { pounds, ounces, drams } = toPoundsOuncesDrams(grams);
  return drams === 0 ? `${pounds}-${String(ounces).padStart(2, '0')}` : `${pounds}-${ounces}-${drams}`;
}
