import type { Units } from '../domain/bag.ts';
import type { Peg } from '../domain/peg.ts';
import { formatDistance } from '../domain/place-words.ts';
import type { PegSurvey, WindAtPeg } from '../ground/survey.ts';
import { monthWords } from '../words/day-words.ts';
import type { WordKey } from '../words/languages.ts';
import type { Say } from '../words/say.ts';
import type { WindWorths } from './day-worths.ts';

export interface SunMonth {
  readonly month: number;
  readonly name: string;
  /** "07:32 to 16:01", or that the sun does not rise or set. */
  readonly daylight: string;
  /** "08:10 to 09:40", "never". */
  readonly inFace: string;
}

export interface WindRow {
  /** "In your face". */
  readonly meets: string;
  /** "N, NNE, NE". */
  readonly from: string;
  /** "12 m to 64 m". */
  readonly fetch: string;
}

/** When the sun stands over the float line, on the fifteenth of each month. */
export function sunMonths(survey: PegSurvey, say: Say): readonly SunMonth[] {
  return survey.sun.map(({ month, sunrise, sunset, inFace }) => ({
    month,
    name: monthWords(month, say),
    daylight: sunrise === null || sunset === null ? say('sky.neverSets') : say('range', { low: sunrise, high: sunset }),
    inFace:
      inFace.length === 0 ? say('sky.never') : inFace.map(([low, high]) => say('range', { low, high })).join(', '),
  }));
}

/** Whose time the hours of a water are told in. */
export function clockWords(timeZone: string, say: Say): string {
  return timeZone === 'UTC' ? 'UTC' : say('sky.localTime');
}

const MEETS: readonly (readonly [WindAtPeg['meets'], WordKey])[] = [
  ['face', 'sky.face'],
  ['across from the left', 'sky.leftToRight'],
  ['across from the right', 'sky.rightToLeft'],
  ['back', 'sky.back'],
];

/** How the wind meets the angler, the sixteen directions put together, with the open water it has crossed. */
export function windRows(survey: PegSurvey, units: Units, say: Say): readonly WindRow[] {
  return MEETS.flatMap(([meets, words]) => {
    const winds = survey.wind.filter((wind) => wind.meets === meets);
    if (winds.length === 0) return [];
    const fetches = winds.map(({ fetchMetres }) => fetchMetres);
    const [least, most] = [Math.min(...fetches), Math.max(...fetches)].map((metres) => formatDistance(metres, units));
    return [
      {
        meets: say(words),
        from: clockwise(winds)
          .map(({ from }) => from)
          .join(', '),
        fetch: least === most ? `${most}` : say('range', { low: `${least}`, high: `${most}` }),
      },
    ];
  });
}

/** From the first direction after a gap on, so that `NNW, N, NNE` is not written `N, NNE, NNW`. */
export function clockwise(winds: readonly WindAtPeg[]): readonly WindAtPeg[] {
  const has = (degrees: number) => winds.some(({ fromDegrees }) => Math.abs(fromDegrees - degrees) < 1);
  const start = winds.findIndex(({ fromDegrees }) => !has((fromDegrees + 337.5) % 360));
  return start <= 0 ? winds : [...winds.slice(start), ...winds.slice(0, start)];
}

/** What the reader's phone needs to work out the sun and wind of another day at the peg. */
export interface SkyFigures {
  readonly lat: string;
  readonly lng: string;
  readonly facing: number;
  readonly zone: string;
  readonly unit: Units['length'];
  /** Whole metres for each of the sixteen points from north, clockwise, with commas between. */
  readonly fetch: string;
  /** What a wind is worth by its open water, as JSON; left out where wind did not earn its place. */
  readonly worth?: string;
}

/** The figures behind a peg's sun and wind. Four places of a degree, ten metres, move the sun by less than 0.001°. */
export function skyFigures(
  peg: Pick<Peg, 'at' | 'facingDegrees'>,
  survey: PegSurvey,
  zone: string,
  units: Units,
  worths: WindWorths | null = null,
): SkyFigures {
  return {
    lat: peg.at.lat.toFixed(4),
    lng: peg.at.lng.toFixed(4),
    facing: peg.facingDegrees,
    zone,
    unit: units.length,
    fetch: survey.wind.map(({ fetchMetres }) => Math.round(fetchMetres)).join(),
    ...(worths === null ? {} : { worth: JSON.stringify(worths) }),
  };
}
