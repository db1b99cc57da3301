import type { BesideTest } from '../ratings/ratings.ts';
import { BESIDE_SILENCE_WORDS } from './ratings-words.ts';

/** What a term beside the model is, in words for the workings. */
const WHAT: Readonly<Record<BesideTest['of'], string>> = {
  room: 'The room beside a peg (pegs left empty on either side that day)',
  wind: 'The wind at a peg (open water along the day’s wind, by its strength and the half of the year)',
  depth: 'The depth at 6 m and 13 m as a curve through the year, in place of “deep water” as a yes or no',
  colour: 'The depth down the edge by the colour of the water (clear, tinged, coloured)',
};

/** Whether a term earned its place in the back-test, with its figures. */
export function besideTestWords(test: BesideTest): string {
  const what = WHAT[test.of];
  if ('why' in test) return `${what} could not be tested: ${BESIDE_SILENCE_WORDS[test.why]}.`;
  const { errorWith, errorWithout, gainInErrors, asked, isEarned } = test;
  const figures = `error ${errorWith.toFixed(4)} with it, ${errorWithout.toFixed(4)} without, ${gainWords(gainInErrors)}; the years before asked for it by ${asked.toFixed(1)}, where 2.7 is chance`;
  return isEarned
    ? `${what} earned its place: it made last year’s forecasts better (${figures}). It is shown with the features and is not in what a peg is worth.`
    : `${what} did not earn its place (${figures}).`;
}

function gainWords(gainInErrors: number): string {
  return `${Math.abs(gainInErrors).toFixed(1)} standard errors ${gainInErrors >= 0 ? 'better' : 'worse'}`;
}
