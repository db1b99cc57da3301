import type { Units } from './bag.ts';
import { formatLength, METRES_PER_FOOT, METRES_PER_INCH, shortDepth } from './length.ts';
import { formatDistance } from './place-words.ts';
import { formatWeight, GRAMS_PER_OUNCE, GRAMS_PER_POUND } from './weight.ts';

const POUNDS = /\b(\d+) lb(?: (\d{1,2}) oz)?\b|\b(\d{1,2}) oz\b/g;
const KILOGRAMS = /\b(\d+(?:\.\d+)?) kg\b|\b(\d+) g\b/g;
const FEET = /\b(\d+) ft(?: (\d{1,2}) in)?\b|\b(\d{1,2}) in\b(?! \d)/g;
// Not the m of m² and m³, beside which the other unit always stands.
const METRES = /\b(\d+(?:\.\d+)?) (m{1,2})\b(?![²³])/g;

const OUNCES_PER_POUND = 16;
const INCHES_PER_FOOT = 12;
const MILLIMETRES = 1000;
/** A few inches are told to so many millimetres. */
const MILLIMETRE_STEP = 5;
/** From so many feet on no depth of a stillwater reaches: a length of whole feet is a distance over the ground, told to the metre. */
const GROUND_FROM_FEET = 40;
/** From this weight on an expected one is given in whole pounds. */
const WHOLE_FROM_POUNDS = 20;

/**
 * Words with every weight in the other unit. What was weighed keeps its places ("23 lb 8 oz" is "10.66 kg"); what is expected is as
 * coarse as it was: tenths of a kilogram, whole ones from 20 kg on; quarters of a pound, whole ones from 20 lb on.
 */
export function weightsInOther(words: string, shown: Units['weight'], isWeighed = false): string {
  if (shown === 'kg') {
    return words.replace(KILOGRAMS, (_, kilos?: string, grams?: string) =>
      poundsWords(kilos === undefined ? Number(grams) : Number(kilos) * 1000, isWeighed),
    );
  }
  return words.replace(POUNDS, (_, pounds?: string, ounces?: string, alone?: string) =>
    kilogramsWords(Number(pounds ?? 0) * GRAMS_PER_POUND + Number(ounces ?? alone ?? 0) * GRAMS_PER_OUNCE, isWeighed),
  );
}

/** Words with every length in the other unit: "1.40 m" is "4 ft 7 in", "140 m" over the ground "459 ft", and back. */
export function lengthsInOther(words: string, shown: Units['length']): string {
  return shown === 'm'
    ? words.replace(METRES, (_, figure: string, unit: string) => feetWords(figure, unit))
    : words.replace(FEET, (_, feet?: string, inches?: string, alone?: string) => metresWords(feet, inches, alone));
}

function feetWords(figure: string, unit: string): string {
  if (unit === 'mm') return `${Math.round(Number(figure) / MILLIMETRES / METRES_PER_INCH)} in`;
  return figure.includes('.')
    ? formatLength(Number(figure), { length: 'ft' })
    : formatDistance(Number(figure), { length: 'ft' });
}

function metresWords(feet?: string, inches?: string, alone?: string): string {
  const metres = metresOf(feet, inches ?? alone);
  if (alone !== undefined) return `${Math.round((metres * MILLIMETRES) / MILLIMETRE_STEP) * MILLIMETRE_STEP} mm`;
  const isOverGround = inches === undefined && Number(feet) >= GROUND_FROM_FEET;
  return isOverGround ? formatDistance(metres, { length: 'm' }) : formatLength(metres, { length: 'm' });
}

/** A depth on a contour or beside a grid line (`1.5 m`, `5 ft`) in the other unit, to a tenth; null where the words are none. */
export function contourInOther(words: string, shown: Units['length']): string | null {
  const figure = new RegExp(`^(\\d+(?:\\.\\d+)?) ${shown}$`).exec(words.trim())?.[1];
  if (figure === undefined) return null;
  const value = shown === 'm' ? Number(figure) / METRES_PER_FOOT : Number(figure) * METRES_PER_FOOT;
  return `${Math.round(value * 10) / 10} ${shown === 'm' ? 'ft' : 'm'}`;
}

/** A depth as short as tables and drawings write it (`2.05`, `6′9″`) in the other unit; null where the words are none. */
export function shortDepthInOther(words: string, shown: Units['length']): string | null {
  if (shown === 'm') return /^\d+\.\d\d$/.test(words) ? shortDepth(Number(words), { length: 'ft' }) : null;
  const [whole, feet, inches] = /^(?:(\d+)′)?(\d{1,2})″$/.exec(words) ?? [];
  return whole === undefined ? null : shortDepth(metresOf(feet, inches), { length: 'm' });
}

/** A bare number of pounds or kilograms below a drawing, in the other unit and as coarse; null where the words are none. */
export function bareWeightInOther(words: string, shown: Units['weight']): string | null {
  if (!/^\d+(\.\d+)?$/.test(words)) return null;
  const perUnit = GRAMS_PER_POUND / 1000;
  const amount = shown === 'lb' ? Number(words) * perUnit : Number(words) / perUnit;
  return String(amount > 0 && amount < 9.5 ? Math.round(amount * 2) / 2 : Math.round(amount));
}

function kilogramsWords(grams: number, isWeighed: boolean): string {
  if (isWeighed) return formatWeight(grams, { weight: 'kg' });
  if (grams < 500) return `${Math.round(grams / 10) * 10} g`;
  return `${(grams / 1000).toFixed(grams < 20_000 ? 1 : 0)} kg`;
}

function poundsWords(grams: number, isWeighed: boolean): string {
  if (isWeighed) return formatWeight(grams, { weight: 'lb' });
  const ounces = grams / GRAMS_PER_OUNCE;
  const step = ounces >= WHOLE_FROM_POUNDS * OUNCES_PER_POUND ? OUNCES_PER_POUND : ounces < OUNCES_PER_POUND ? 1 : 4;
  const rounded = Math.round(ounces / step) * step;
  const [pounds, rest] = [Math.floor(rounded / OUNCES_PER_POUND), rounded % OUNCES_PER_POUND];
  if (rest === 0) return `${pounds} lb`;
  return pounds === 0 ? `${rest} oz` : `${pounds} lb ${rest} oz`;
}

function metresOf(feet = '0', inches = '0'): number {
  return Number(feet) * METRES_PER_FOOT + (Number(inches) % INCHES_PER_FOOT) * METRES_PER_INCH;
}
