import { MONTHS, type Month } from '../domain/day.ts';
import type { WindAtPeg } from '../ground/survey.ts';
import { monthWords } from '../words/day-words.ts';
import type { Say } from '../words/say.ts';
import { atAskedLines } from './asked-lines.ts';
import type { BagPlan, BagPlanMonth } from './bag-plan.ts';
import type { DepthRow, DepthSectionView } from './depth-section.ts';
import { clockwise, type SunMonth } from './peg-sky.ts';
import type { WorthByMonth } from './worth-by-month.ts';
import { evidenceWords, parWords, type WorthWords } from './worth-words.ts';

/** What an angler asks first of a peg, in one month. */
export interface AnswerMonth {
  readonly month: Month;
  readonly name: string;
  readonly bag: BagPlanMonth | null;
  readonly worth: { readonly known: WorthWords; readonly said: string; readonly evidence: string } | null;
  /** When the sun stands low over the float: "07:26 to 10:44", "never". */
  readonly sun: string | null;
}

/** The strip of answers at the head of a sheet. */
export interface PegAnswer {
  readonly months: readonly AnswerMonth[];
  readonly nowMonth: Month;
  /** Depth at the lines asked for most, `11 m` with today's depth, or null where nobody has plumbed. */
  readonly depths: readonly { readonly name: string; readonly row: DepthRow }[];
  /** "E to SSW" where the wind is in the face; null where the peg faces no water. */
  readonly windInFace: string | null;
}

/** Puts the answers of a sheet together, month by month. */
export function pegAnswer(
  worths: WorthByMonth | null,
  bag: BagPlan | null,
  depth: DepthSectionView,
  sun: readonly SunMonth[],
  wind: readonly WindAtPeg[],
  nowMonth: Month,
  say: Say,
): PegAnswer {
  const isRated = worths !== null || bag !== null;
  const months = MONTHS.map((month): AnswerMonth => {
    const known = worths?.months.find((each) => each.month === month)?.known ?? null;
    const spells = sun.find((each) => each.month === month)?.inFace;
    return {
      month,
      name: monthWords(month, say),
      bag: bag?.months.find((each) => each.month === month) ?? null,
      worth:
        known === null
          ? null
          : {
              known,
              said: parWords(known.shown.value, say),
              evidence: evidenceWords(known.evidence, known.sessions, say),
            },
      sun: spells ?? null,
    };
  });
  return {
    months: isRated || sun.length > 0 ? months : [],
    nowMonth,
    depths: atAskedLines(depth.rows, say),
    windInFace: windInFace(wind, say),
  };
}

/** The winds that blow in the face, from the first to the last of them clockwise. */
function windInFace(wind: readonly WindAtPeg[], say: Say): string | null {
  const winds = clockwise(wind.filter(({ meets }) => meets === 'face'));
  const [first, last] = [winds[0]?.from, winds.at(-1)?.from];
  if (first === undefined || last === undefined) return null;
  return first === last ? first : say('range', { low: first, high: last });
}
