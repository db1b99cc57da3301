import type { Units } from '../domain/bag.ts';
import { formatWeight, toPoundsOuncesDrams } from '../domain/weight.ts';

/** The weight of one fish, finer than a bag's: below a pound to the dram (`3 oz 4 dr`), in metric below a kilogram in grams. */
export function formatFishWeight(grams: number, units: Pick<Units, 'weight'>): string {
  if (units.weight === 'kg') return grams < 1000 ? `${Math.round(grams)} g` : formatWeight(grams, units);
  const { pounds, ounces, drams } = toPoundsOuncesDrams(grams);
  if (pounds > 0) return formatWeight(grams, units);
  if (ounces === 0) return `${drams} dr`;
  return drams === 0 ? `${ounces} oz` : `${ounces} oz ${drams} dr`;
}
