import type { Units } from '../../domain/bag.ts';
import { parseBearing } from '../../domain/compass.ts';
import type { Month } from '../../domain/day.ts';
import { parseLength, parseSignedLength } from '../../domain/length.ts';
import { type Parsed, parsed, unreadable } from '../../domain/parsed.ts';
import { monthsOfHeading } from '../../domain/season.ts';
import { parseSlope } from '../../domain/slope.ts';
import { parseTemperature, parseWindSpeed } from '../../domain/weather.ts';
import { parseWeight } from '../../domain/weight.ts';
import { fieldOf, NUMBER_OR_TEXT, wholeNumber } from './fields.ts';

/** Lengths nobody has at a stillwater are slips of the unit. */
const MAX_METRES = 2000;

/** A length of 0 or more, in metres; a bare number takes the venue's unit. */
export function length(units: Units, description: string, most = MAX_METRES) {
  return fieldOf((written) => atMost(parseLength(written, units.length), most), {
    description: `${description}: a length such as 1.4 m or 4 ft 6 in`,
    type: NUMBER_OR_TEXT,
    examples: ['1.4 m', '4 ft 6 in'],
  });
}

/** A length above or below a level, in metres. */
export function signedLength(units: Units, description: string, most = MAX_METRES) {
  return fieldOf((written) => atMost(parseSignedLength(written, units.length), most), {
    description: `${description}: a length such as -0.2 m`,
    type: NUMBER_OR_TEXT,
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
      examples: ['23-08', '10.66 kg'],
    },
  );
}

/** A slope in degrees from the level. */
export const slope = () =>
  fieldOf(parseSlope, { description: 'a slope such as 26 deg or 1 in 2', examples: ['1 in 2'] });

/** A bearing in degrees clockwise from true north. */
export const bearing = () =>
  fieldOf(parseBearing, { description: 'degrees from true north, or a point such as NNE', type: NUMBER_OR_TEXT });

/** A temperature in degrees Celsius. */
export const temperature = () =>
  fieldOf(parseTemperature, { description: 'degrees Celsius such as 12.5', type: NUMBER_OR_TEXT });

/** A wind speed in metres per second. */
export const windSpeed = () =>
  fieldOf(parseWindSpeed, { description: 'a wind speed such as 4 m/s or 9 mph', type: NUMBER_OR_TEXT });

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
