import { toPoundsOuncesDrams } from '../../domain/weight.ts';

/** A weight as the scales show it: `12-04-08` in pounds, ounces and drams, or `5.560 kg`. */
export function weightWords(grams: number, unit: 'lb' | 'kg'): string {
  if (unit === 'kg') return `${(grams / 1000).toFixed(3)} kg`;
  const { pounds, ounces, drams } = toPoundsOuncesDrams(grams);
  return `${pounds} lb ${ounces} oz${drams === 0 ? '' : ` ${drams} dr`}`;
}
