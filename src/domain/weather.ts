import { DECIMAL, type Parsed, parsed, unreadable } from './parsed.ts';

/** Exact: a mile is 1609.344 m (International yard and pound agreement, 1959). */
const METRES_PER_SECOND_PER_MPH = 1609.344 / 3600;
const WIND = new RegExp(`^(${DECIMAL})\\s*(m/s|mph)?$`, 'i');
const TEMPERATURE = new RegExp(`^([-−+]?)(${DECIMAL})\\s*(?:°?\\s*C)?$`, 'i');
/** Outside these a reading is a slip: open water that is not ice, and air on a bank. */
export const MIN_DEGREES_C = -30;
export const MAX_DEGREES_C = 50;
/** No event is fished in such a wind: a figure above it is a slip. */
export const MAX_METRES_PER_SECOND = 65;

/** The forms of a wind speed and of a temperature, for editors. */
export const WIND_FORMS: readonly RegExp[] = [WIND];
export const TEMPERATURE_FORMS: readonly RegExp[] = [TEMPERATURE];

/** Reads a mean wind speed in metres per second: bare or `m/s`, or `mph`. */
export function parseWindSpeed(text: string): Parsed<number> {
  const match = WIND.exec(text.trim());
  const value =
    match === null
      ? Number.NaN
      : Number(match[1]) * (match[2]?.toLowerCase() === 'mph' ? METRES_PER_SECOND_PER_MPH : 1);
  if (value <= MAX_METRES_PER_SECOND) return parsed(value);
  return unreadable('wind-speed', 'a wind speed such as 4 m/s or 9 mph', 'Write the mean speed, not a Beaufort force.');
}

/** Reads a temperature in degrees Celsius: `12.5` or `12.5 C`. */
export function parseTemperature(text: string): Parsed<number> {
  const match = TEMPERATURE.exec(text.trim());
  const degrees = match === null ? Number.NaN : Number(match[2]) * (match[1] === '-' || match[1] === '−' ? -1 : 1);
  if (degrees >= MIN_DEGREES_C && degrees <= MAX_DEGREES_C) return parsed(degrees === 0 ? 0 : degrees);
  return unreadable('temperature', 'degrees Celsius such as 12.5', 'Write degrees Celsius, from −30 to 50.');
}
