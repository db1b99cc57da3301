import type { Units } from './bag.ts';
import { commaAdvice, DECIMAL, hasDecimalComma, type Parsed, parsed, unreadable } from './parsed.ts';

/** Exact since 1959 (International yard and pound agreement; Weights and Measures Act 1985, schedule 1). */
export const GRAMS_PER_POUND = 453.59237;
const OUNCES_PER_POUND = 16;
const DRAMS_PER_OUNCE = 16;
export const GRAMS_PER_OUNCE = GRAMS_PER_POUND / OUNCES_PER_POUND;
export const GRAMS_PER_DRAM = GRAMS_PER_OUNCE / DRAMS_PER_OUNCE;

/** A weight in the trade's units. Ounces and drams run from 0 to 15. */
export interface PoundsOunces {
  readonly pounds: number;
  readonly ounces: number;
}
export interface PoundsOuncesDrams extends PoundsOunces {
  readonly drams: number;
}

const EXPECTED = 'a weight such as 23-08, 23 lb 8 oz, 10.66 kg or 850 g';
const HYPHENS = /^(\d{1,6})-(\d{1,4})(?:-(\d{1,4}))?$/;
const IMPERIAL = new RegExp(
  `^(?:(${DECIMAL})\\s*lbs?\\.?)?\\s*(?:(${DECIMAL})\\s*oz\\.?)?\\s*(?:(${DECIMAL})\\s*(?:dr|dram|drams)\\.?)?$`,
  'i',
);
const METRIC = new RegExp(`^(${DECIMAL})\\s*(kg|g)$`, 'i');
const BARE = new RegExp(`^${DECIMAL}$`);
/** Pounds, ounces and drams where the smaller units are not yet one of the larger. */
const WELL_CARRIED = /^\d{1,6}-0{0,2}(?:\d|1[0-5])(?:-0{0,2}(?:\d|1[0-5]))?$/;
/** The forms of a weight, for editors. */
export const WEIGHT_FORMS: readonly RegExp[] = [BARE, METRIC, IMPERIAL, WELL_CARRIED];
/** What a spreadsheet makes of `23-08`. */
const TURNED_INTO_A_DATE =
  /^(?:\d{1,4}-[a-z]{3,9}(?:-\d{2,4})?|[a-z]{3,9}-\d{1,4}|\d{1,4}[/.]\d{1,2}[/.]\d{2,4}|\d{4}-\d{2}-\d{2})$/i;

/**
 * Reads a weight as a person writes it, in grams: `23-08` and `23-8-0` (pounds, ounces, drams), `23 lb 8 oz`, `8 oz`,
 * `10.66 kg`, `850 g`; a bare number takes `bareUnit`. Ounces and drams that follow a larger unit are below 16.
 */
export function parseWeight(text: string, bareUnit: Units['weight']): Parsed<number> {
  const written = text.trim();
  const hyphens = HYPHENS.exec(written);
  if (hyphens !== null && !/^\d{4}-\d{2}-\d{2}$/.test(written)) {
    return fromPoundsOunces(Number(hyphens[1]), Number(hyphens[2]), Number(hyphens[3] ?? 0));
  }
  if (BARE.test(written)) return parsed(Number(written) * (bareUnit === 'kg' ? 1000 : GRAMS_PER_POUND));
  const metric = METRIC.exec(written);
  if (metric !== null) return parsed(Number(metric[1]) * (metric[2]?.toLowerCase() === 'kg' ? 1000 : 1));
  const imperial = written === '' ? null : IMPERIAL.exec(written);
  if (imperial !== null) return fromImperial(imperial[1], imperial[2], imperial[3]);
  if (TURNED_INTO_A_DATE.test(written)) {
    return unreadable(
      'weight-date',
      EXPECTED,
      'A spreadsheet has taken pounds and ounces for a date: format the column as text and write the weight again.',
    );
  }
  if (/^[-−–—.*]+$/.test(written)) return unreadable('weight-mark', EXPECTED, MARK);
  if (/^[-−]/.test(written)) return unreadable('weight-negative', 'a weight of 0 or more', 'Take the minus sign away.');
  if (hasDecimalComma(written)) return unreadable('weight-number', EXPECTED, commaAdvice(written));
  return unreadable('weight-number', EXPECTED, poundsOuncesAdvice(written) ?? 'Write the weight with its unit.');
}

const MARK =
  'Say in status what the mark means: dnw (fished and did not weigh), blank (weighed in with nothing) or absent, and leave the weight empty.';

/** Two numbers written some other way (23lb8, 23/8, 23:8, 23 8) are told as pounds and ounces; null where they cannot be. */
function poundsOuncesAdvice(written: string): string | null {
  const [, pounds, ounces] = /^(\d{1,4})\s*(?:lbs?\.?|[/:;'’\s])\s*(\d{1,2})$/i.exec(written) ?? [];
  if (pounds === undefined || ounces === undefined || Number(ounces) >= OUNCES_PER_POUND) return null;
  return `Write ${pounds}-${ounces.padStart(2, '0')} if ${pounds} lb ${Number(ounces)} oz is what was weighed.`;
}

function fromImperial(lb: string | undefined, oz: string | undefined, dr: string | undefined): Parsed<number> {
  const parts = [lb, oz, dr].filter((part) => part !== undefined);
  if (parts.slice(0, -1).some((part) => part.includes('.'))) {
    return unreadable('weight-number', EXPECTED, 'Only the smallest unit may have decimals: 4 lb 8.5 oz.');
  }
  const followsPounds = lb !== undefined;
  const ounces = Number(oz ?? 0);
  if (followsPounds || dr !== undefined)
    return fromPoundsOunces(Number(lb ?? 0), ounces, Number(dr ?? 0), followsPounds);
  return parsed(ounces * GRAMS_PER_OUNCE);
}

function fromPoundsOunces(pounds: number, ounces: number, drams: number, followsPounds = true): Parsed<number> {
  if (followsPounds && ounces >= OUNCES_PER_POUND) {
    return unreadable(
      'weight-ounces',
      'ounces from 0 to 15 after the pounds',
      `16 oz are a pound: ${pounds}-${ounces} would be ${pounds + Math.floor(ounces / 16)}-${String(Math.floor(ounces % 16)).padStart(2, '0')}, if that is what was weighed.`,
    );
  }
  if (drams >= DRAMS_PER_OUNCE) {
    return unreadable('weight-drams', 'drams from 0 to 15 after the ounces', '16 drams are an ounce: carry them over.');
  }
  return parsed((pounds * 256 + ounces * 16 + drams) * GRAMS_PER_DRAM);
}

/** A weight to the nearest ounce, ties upward, carried into pounds: 453.5 g is 1 lb 0 oz, never 0 lb 16 oz. */
export function toPoundsOunces(grams: number): PoundsOunces {
  const ounces = Math.round(grams / GRAMS_PER_OUNCE);
  return { pounds: Math.floor(ounces / 16), ounces: ounces % 16 };
}

/** A weight to the nearest dram, ties upward, carried into ounces and pounds. */
export function toPoundsOuncesDrams(grams: number): PoundsOuncesDrams {
  const drams = Math.round(grams / GRAMS_PER_DRAM);
  return { pounds: Math.floor(drams / 256), ounces: Math.floor(drams / 16) % 16, drams: drams % 16 };
}

/**
 * A weight as it is shown: `23 lb 8 oz` to the nearest ounce, or `10.66 kg`; below a pound `8 oz`, below 100 g `45 g`.
 * @param grams 0 or more
 */
export function formatWeight(grams: number, units: Pick<Units, 'weight'>): string {
  if (units.weight === 'kg') {
    return grams < 99.5 ? `${Math.round(grams)} g` : `${(grams / 1000).toFixed(2)} kg`;
  }
  const { pounds, ounces } = toPoundsOunces(grams);
  return pounds === 0 ? `${ounces} oz` : `${pounds} lb ${ounces} oz`;
}
