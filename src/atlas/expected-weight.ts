import type { Units } from '../domain/bag.ts';
import { GRAMS_PER_OUNCE, GRAMS_PER_POUND } from '../domain/weight.ts';

/**
 * A weight that is expected, not weighed, to the step a forecast deserves: pounds from 20 lb on, half pounds from 5 lb,
 * quarters below, ounces below a pound; whole kilograms from 20 kg on, then half and tenths. Zero is `0`.
 */
export function expectedWeight(kilograms: number, unit: Units['weight']): string {
  if (unit === 'kg') return kilogramsWords(kilograms);
  const ounces = expectedOunces(kilograms);
  if (ounces === 0) return '0';
  const [whole, rest] = [Math.floor(ounces / 16), ounces % 16];
  if (whole === 0) return `${rest} oz`;
  return rest === 0 ? `${whole} lb` : `${whole} lb ${rest} oz`;
}

/** The same as whole grams, so that what is reckoned from it on a phone agrees with what the sheet says. */
export function expectedGrams(kilograms: number, unit: Units['weight']): number {
  return Math.round(unit === 'kg' ? expectedKilograms(kilograms) * 1000 : expectedOunces(kilograms) * GRAMS_PER_OUNCE);
}

/** The number alone in whole pounds or kilograms, for a row of figures under a drawing. */
export function expectedWhole(kilograms: number, unit: Units['weight']): string {
  const amount = amountIn(kilograms, unit);
  return amount > 0 && amount < 9.5 ? String(Math.round(amount * 2) / 2) : String(Math.round(amount));
}

/** Kilograms as a number of the venue's unit. */
export function amountIn(kilograms: number, unit: Units['weight']): number {
  return unit === 'kg' ? kilograms : (kilograms * 1000) / GRAMS_PER_POUND;
}

function expectedOunces(kilograms: number): number {
  const grams = kilograms * 1000;
  const pounds = grams / GRAMS_PER_POUND;
  const step = pounds >= 20 ? 16 : pounds >= 5 ? 8 : pounds >= 1 ? 4 : 1;
  return Math.round(grams / GRAMS_PER_OUNCE / step) * step;
}

function expectedKilograms(kilograms: number): number {
  const step = kilograms >= 20 ? 1 : kilograms >= 10 ? 0.5 : kilograms >= 0.5 ? 0.1 : 0.01;
  return Math.round(kilograms / step) * step;
}

function kilogramsWords(kilograms: number): string {
  if (kilograms < 0.005) return '0';
  if (kilograms < 0.5) return `${expectedGrams(kilograms, 'kg')} g`;
  return `${Number(expectedKilograms(kilograms).toFixed(1))} kg`;
}
