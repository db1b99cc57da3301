import type { Units } from './bag.ts';
import { commaAdvice, DECIMAL, hasDecimalComma, type Parsed, parsed, unreadable } from './parsed.ts';

/** Exact since 1959 (International yard and pound agreement; Weights and Measures Act 1985, schedule 1). */
const METRES_PER_YARD = 0.9144;
export const METRES_PER_FOOT = 0.3048;
export const METRES_PER_INCH = 0.0254;
const INCHES_PER_FOOT = 12;

export interface FeetInches {
  readonly feet: number;
  /** 0 to 11. */
  readonly inches: number;
}

const EXPECTED = 'a length such as 1.4 m, 45 cm, 4 ft 6 in or 12 yd';
const METRIC = new RegExp(`^(${DECIMAL})\\s*(m|cm|mm)$`, 'i');
const YARDS = new RegExp(`^(${DECIMAL})\\s*(?:yd|yds|yard|yards)\\.?$`, 'i');
const IMPERIAL = new RegExp(
  `^(?:(${DECIMAL})\\s*(?:ft\\.?|feet|foot|[’'′]))?\\s*(?:(${DECIMAL})\\s*(?:in\\.?|ins|inch|inches|[”"″]))?$`,
  'i',
);
const BARE = new RegExp(`^${DECIMAL}$`);
/** The forms of a length, for editors. */
export const LENGTH_FORMS: readonly RegExp[] = [BARE, METRIC, YARDS, IMPERIAL];
const METRIC_METRES: Readonly<Record<string, number>> = { m: 1, cm: 0.01, mm: 0.001 };

/**
 * Reads a length as a person writes it, in metres: `1.4 m`, `45 cm`, `4 ft 6 in`, `4' 6"`, `12 yd`; a bare number takes
 * `bareUnit`. Inches that follow feet are below 12.
 */
export function parseLength(text: string, bareUnit: Units['length']): Parsed<number> {
  const written = text.trim();
  if (BARE.test(written)) return parsed(bareUnit === 'm' ? Number(written) : Number(written) * METRES_PER_FOOT);
  const metric = METRIC.exec(written);
  if (metric !== null) {
    const unit = metric[2]?.toLowerCase() as string;
    // Dividing keeps `45 cm` at 0.45 where multiplying by 0.01 would not.
    return parsed(Number(metric[1]) / Math.round(1 / (METRIC_METRES[unit] as number)));
  }
  const yards = YARDS.exec(written);
  if (yards !== null) return parsed(Number(yards[1]) * METRES_PER_YARD);
  const imperial = written === '' ? null : IMPERIAL.exec(written);
  if (imperial !== null) return fromFeetInches(imperial[1], imperial[2]);
  if (/^[-−]/.test(written)) return unreadable('length-negative', 'a length of 0 or more', 'Take the minus sign away.');
  if (hasDecimalComma(written)) return unreadable('length-number', EXPECTED, commaAdvice(written));
  return unreadable('length-number', EXPECTED, 'Write the length with its unit.');
}

/** As `parseLength`, with a minus sign allowed: a water level below its datum is negative. */
export function parseSignedLength(text: string, bareUnit: Units['length']): Parsed<number> {
  const written = text.trim();
  const sign = /^[-−]/.test(written) ? -1 : 1;
  const length = parseLength(written.replace(/^[-−+]\s*/, ''), bareUnit);
  // `0 * -1` is -0, which prints oddly.
  return length.ok ? parsed(length.value === 0 ? 0 : sign * length.value) : length;
}

function fromFeetInches(feet: string | undefined, inches: string | undefined): Parsed<number> {
  if (feet === undefined) return parsed(Number(inches) * METRES_PER_INCH);
  if (inches !== undefined && feet.includes('.')) {
    return unreadable('length-number', EXPECTED, 'Only the smallest unit may have decimals: 4 ft 6.5 in.');
  }
  if (Number(inches ?? 0) >= INCHES_PER_FOOT) {
    return unreadable('length-inches', 'inches below 12 after the feet', '12 in are a foot: carry them over.');
  }
  // In inches first: whole numbers, so that 5 ft 11 in is 1.8034 m and not a hair beside it.
  return parsed(((Number(feet) * INCHES_PER_FOOT + Number(inches ?? 0)) * 254) / 10_000);
}

/** A length to the nearest inch, ties upward, carried into feet: 1.8287 m is 6 ft 0 in, never 5 ft 12 in. */
export function toFeetInches(metres: number): FeetInches {
  const inches = Math.round(metres / METRES_PER_INCH);
  return { feet: Math.floor(inches / INCHES_PER_FOOT), inches: inches % INCHES_PER_FOOT };
}

/**
 * A length as it is shown: `1.40 m` (`17.0 m` from ten metres on, or as many decimals as asked), or `4 ft 7 in` to the
 * nearest inch. A negative one has a minus sign.
 */
export function formatLength(metres: number, units: Pick<Units, 'length'>, decimals?: number): string {
  if (metres < 0) {
    const positive = formatLength(-metres, units, decimals);
    return /[1-9]/.test(positive) ? `−${positive}` : positive;
  }
  if (units.length === 'm') return `${metres.toFixed(decimals ?? (metres < 9.995 ? 2 : 1))} m`;
  const { feet, inches } = toFeetInches(metres);
  if (feet === 0) return `${inches} in`;
  return inches === 0 ? `${feet} ft` : `${feet} ft ${inches} in`;
}

/** A depth short enough for a table on a phone, or below a lead: `2.05`, `6′9″`. */
export function shortDepth(depthMetres: number, units: Pick<Units, 'length'>): string {
  if (units.length === 'm') return depthMetres.toFixed(2);
  const { feet, inches } = toFeetInches(depthMetres);
  return feet === 0 ? `${inches}″` : `${feet}′${inches}″`;
}
