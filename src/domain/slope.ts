import { DECIMAL, type Parsed, parsed, unreadable } from './parsed.ts';

const EXPECTED = 'a slope such as 26 deg or 1 in 2';
const DEGREES = new RegExp(`^(${DECIMAL})\\s*(?:deg|degrees|°)$`, 'i');
const RATIO = new RegExp(`^(${DECIMAL})\\s*(?:in|:)\\s*(${DECIMAL})$`, 'i');

/** The forms of a slope and of a gradient, for editors. */
export const SLOPE_FORMS: readonly RegExp[] = [DEGREES, RATIO];
export const GRADIENT_FORMS: readonly RegExp[] = [RATIO];

/** Reads a slope, in degrees from the level: `26 deg`, or `1 in 2` (1 up for 2 along, so 26.6°). A bare number is refused. */
export function parseSlope(text: string): Parsed<number> {
  const degrees = DEGREES.exec(text.trim());
  if (degrees !== null) {
    const value = Number(degrees[1]);
    return value <= 90 ? parsed(value) : unreadable('slope-range', 'a slope up to 90 degrees', 'Correct the slope.');
  }
  const gradient = parseGradient(text);
  return gradient.ok ? parsed((Math.atan(gradient.value) * 180) / Math.PI) : gradient;
}

/** Reads a gradient, rise over run: `1 in 20` is 0.05. */
export function parseGradient(text: string): Parsed<number> {
  const ratio = RATIO.exec(text.trim());
  if (ratio !== null && Number(ratio[2]) > 0) return parsed(Number(ratio[1]) / Number(ratio[2]));
  return unreadable('slope-number', EXPECTED, 'Write degrees with deg behind them, or rise and run as 1 in 2.');
}
