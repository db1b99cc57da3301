import { DECIMAL, type Parsed, parsed, unreadable } from './parsed.ts';

/** The sixteen points, each 22.5° on from the one before, from north by east. */
export const COMPASS_POINTS: readonly string[] = [
  'N',
  'NNE',
  'NE',
  'ENE',
  'E',
  'ESE',
  'SE',
  'SSE',
  'S',
  'SSW',
  'SW',
  'WSW',
  'W',
  'WNW',
  'NW',
  'NNW',
];

const DEGREES_PER_POINT = 22.5;
const BARE = new RegExp(`^(${DECIMAL})\\s*(?:deg|degrees|°)?$`, 'i');
/** The forms of a bearing, for editors. */
export const BEARING_FORMS: readonly RegExp[] = [
  /^(?:(?:[0-2]?\d?\d|3[0-5]\d)(?:\.\d{1,12})?|360(?:\.0{1,12})?|\.\d{1,12})\s*(?:deg|degrees|°)?$/i,
  new RegExp(`^(?:${COMPASS_POINTS.join('|')})$`, 'i'),
];

/** Reads a bearing, in degrees clockwise from true north, 0 to below 360: `48`, `48 deg`, or one of sixteen points (`NNE`). */
export function parseBearing(text: string): Parsed<number> {
  const written = text.trim();
  const point = COMPASS_POINTS.indexOf(written.toUpperCase());
  if (point !== -1) return parsed(point * DEGREES_PER_POINT);
  const bare = BARE.exec(written);
  const degrees = bare === null ? Number.NaN : Number(bare[1]);
  if (degrees >= 0 && degrees <= 360) return parsed(degrees % 360);
  return unreadable(
    'bearing',
    'degrees from true north, 0 to 360, or a point such as NNE',
    'Write degrees clockwise from true north, or one of the sixteen points.',
  );
}

/** The nearest of the sixteen points to a bearing. */
export function compassPoint(bearingDegrees: number): string {
  const index = Math.round((((bearingDegrees % 360) + 360) % 360) / DEGREES_PER_POINT) % 16;
  return COMPASS_POINTS[index] as string;
}
