import type { Units } from '../../domain/bag.ts';
import { BEARING_FORMS, parseBearing } from '../../domain/compass.ts';
import type { Month } from '../../domain/day.ts';
import { LENGTH_FORMS, METRES_PER_FOOT, parseLength, parseSignedLength } from '../../domain/length.ts';
import { type Parsed, parsed, unreadable } from '../../domain/parsed.ts';
import { monthsOfHeading } from '../../domain/season.ts';
import { parseSlope, SLOPE_FORMS } from '../../domain/slope.ts';
import {
  MAX_DEGREES_C,
  MAX_METRES_PER_SECOND,
  MIN_DEGREES_C,
  parseTemperature,
  parseWindSpeed,
  TEMPERATURE_FORMS,
  WIND_FORMS,
} from '../../domain/weather.ts';
import { GRAMS_PER_POUND, parseWeight, WEIGHT_FORMS } from '../../domain/weight.ts';
import { fieldOf, NUMBER_OR_TEXT, wholeNumber } from './fields.ts';
import { schemaPattern } from './schema-pattern.ts';

/** Lengths nobody has at a stillwater are slips of the unit. */
const MAX_METRES = 2000;

/** What an editor lets through as a bare number, which is in feet where a venue says so. */
const bareMost = (metres: number) => Math.ceil(metres / METRES_PER_FOOT);

/** A length of 0 or more, in metres; a bare number takes the venue's unit. */
export function length(units: Units, description: string, most = MAX_METRES) {
  return fieldOf((written) => atMost(parseLength(written, units.length), most), {
    description: `${description}: a length such as 1.4 m or 4 ft 6 in`,
    type: NUMBER_OR_TEXT,
    pattern: schemaPattern(LENGTH_FORMS),
    minimum: 0,
    maximum: bareMost(most),
    examples: ['1.4 m', '4 ft 6 in'],
  });
}

/** A length above or below a level, in metres. */
export function signedLength(units: Units, description: string, most = MAX_METRES) {
  return fieldOf((written) => atMost(parseSignedLength(written, units.length), most), {
    description: `${description}: a length such as -0.2 m`,
    type: NUMBER_OR_TEXT,
    pattern: schemaPattern(
      LENGTH_FORMS.map(({ source, flags }) => new RegExp(`[-−+]?\\s*(?:${source.slice(1, -1)})`, flags)),
    ),
    minimum: -bareMost(most),
    maximum: bareMost(most),
    examples: ['-0.2 m'],
  });
}

function atMost(length: Parsed<number>, most: number): Parsed<number> {
  if (!length.ok || Math.abs(length.value) <= most) return length;
  return unreadable('length-range', `at most ${most} m`, 'Correct the figure or its unit.');
}

/** No bag, and no fish, of a stillwater match weighs a tonne. */
const MAX_GRAMS = 1_000_000;

/** A weight in grams; a bare number takes the venue's unit. */
export function weight(units: Units, description: string) {
  return fieldOf(
    (written) => {
      const grams = parseWeight(written, units.weight);
      if (!grams.ok || grams.value <= MAX_GRAMS) return grams;
      return unreadable('weight-range', 'at most 1000 kg', 'Correct the figure or its unit.');
    },
    {
      description: `${description}: a weight such as 23-08 or 10.66 kg`,
      type: NUMBER_OR_TEXT,
      pattern: schemaPattern(WEIGHT_FORMS),
      minimum: 0,
      maximum: Math.ceil(MAX_GRAMS / GRAMS_PER_POUND),
      examples: ['23-08', '10.66 kg'],
    },
  );
}

/** A slope in degrees from the level. */
export const slope = () =>
  fieldOf(parseSlope, {
    description: 'a slope such as 26 deg or 1 in 2',
    pattern: schemaPattern(SLOPE_FORMS),
    examples: ['1 in 2'],
  });

/** A bearing in degrees clockwise from true north. */
export const bearing = () =>
  fieldOf(parseBearing, {
    description: 'degrees from true north, or a point such as NNE',
    type: NUMBER_OR_TEXT,
    pattern: schemaPattern(BEARING_FORMS),
    minimum: 0,
    maximum: 360,
  });

/** A temperature in degrees Celsius. */
export const temperature = () =>
  fieldOf(parseTemperature, {
    description: 'degrees Celsius such as 12.5',
    type: NUMBER_OR_TEXT,
    pattern: schemaPattern(TEMPERATURE_FORMS),
    minimum: MIN_DEGREES_C,
    maximum: MAX_DEGREES_C,
  });

/** A wind speed in metres per second. */
export const windSpeed = () =>
  fieldOf(parseWindSpeed, {
    description: 'a wind speed such as 4 m/s or 9 mph',
    type: NUMBER_OR_TEXT,
    pattern: schemaPattern(WIND_FORMS),
    minimum: 0,
    maximum: MAX_METRES_PER_SECOND,
  });

/** Months of the year, as a heading names them. */
export const months = () =>
  fieldOf<readonly Month[]>(
    (written) => {
      const named = monthsOfHeading(written);
      return named.length > 0
        ? parsed(named)
        : unreadable('months', 'months such as March to August', 'Write English names of months or a season.');
    },
    { description: 'months such as March to August' },
  );

/** Severity or likelihood on the 5 × 5 matrix. */
export const riskLevel = (description: string) =>
  wholeNumber(`${description}, 1 (least) to 5`, 1, 5).transform((level) => level as 1 | 2 | 3 | 4 | 5);
