import type { DrawData, DrawHours } from '../../atlas/draw-page.ts';
import { expectedWeight } from '../../atlas/expected-weight.ts';
import { countWords } from '../../domain/count-words.ts';
import type { Month } from '../../domain/day.ts';
import { monthName } from '../../domain/day.ts';
import { formatWeight } from '../../domain/weight.ts';
import { heavierThan, type Pace } from '../../match-day/pace.ts';
import type { Target } from './outing.ts';

/** What the pace needs of the water. */
export type PaceWater = Pick<DrawData, 'weightUnit' | 'framing' | 'logged' | 'name'>;

/** The weight that is aimed at in a month; null where no match logged says. */
export function targetGrams(target: Target, { framing }: PaceWater, month: Month): number | null {
  if (target.kind === 'own') return target.grams;
  const known = framing[month];
  return known === undefined ? null : target.kind === 'frame' ? known.frame : known.win;
}

/** What is aimed at, in words: "14 lb, typical to frame in November (12 matches logged)". */
export function targetWords(target: Target, water: PaceWater, month: Month): string {
  const grams = targetGrams(target, water, month);
  if (target.kind === 'own') return `${weight(target.grams, water)}, your own`;
  const what = target.kind === 'frame' ? 'to frame' : 'to win';
  if (grams === null) return `not known: no match logged in ${monthName(month)}. Set your own.`;
  const matches = water.framing[month]!.matches;
  return `${expected(grams, water)}, typical ${what} in ${monthName(month)} (${countWords(matches, 'match', 'matches')} logged)`;
}

/** By what a bag is laid over the hours, after a comma, and how much that is worth. */
export function spreadWords(known: DrawHours | undefined, hours: number): string {
  if (known === undefined)
    return `spread evenly over ${hours} hours: too few matches are logged by the hour to tell when fish come.`;
  const { about, bags, matches, isThin, matchHours } = known;
  const other =
    hours === matchHours ? '' : ` Those matches lasted ${matchHours} hours: their shares are spread over yours.`;
  const thin = isThin ? ' Thin: so few matches may mislead.' : '';
  return `by when fish came here in ${about} (${bags} bags of ${matches} matches, noted by anglers). Every part of the bag is taken to come like the whole.${other}${thin}`;
}

/** How it goes, a sentence each: what is caught, what is needed, where it would end, where it stands among bags logged. */
export function paceLines(pace: Pace, aim: number | null, water: PaceWater, month: Month): readonly string[] {
  return [
    timeWords(pace),
    ...(aim === null ? [] : [neededWords(pace, water)]),
    ...(pace.endGrams === null || pace.state !== 'fishing' || pace.caughtGrams === 0
      ? []
      : [`Going on like this it ends at about ${expected(pace.endGrams, water)}.`]),
    ...(pace.caughtGrams === 0 ? [] : [standsWords(pace.caughtGrams, water, month)]),
  ];
}

function timeWords({ state, minutesLeft }: Pace): string {
  if (state === 'before') return 'Not all in yet.';
  if (state === 'over') return 'All out: this is the bag to weigh.';
  return `${durationWords(minutesLeft)} left.`;
}

function neededWords({ stillGrams, neededAnHour, state }: Pace, water: PaceWater): string {
  if (stillGrams === 0) return 'That is the weight you set out for.';
  if (state === 'over' || neededAnHour === null) return `${weight(stillGrams, water)} short of it.`;
  return `${weight(stillGrams, water)} to go: ${weight(neededAnHour, water)} an hour from here.`;
}

function standsWords(grams: number, water: PaceWater, month: Month): string {
  const logged = water.logged[month];
  if (logged === undefined) return `Too few bags are logged in ${monthName(month)} to say where it stands.`;
  const percent = Math.round(heavierThan(grams, logged.percentiles));
  const of = `the ${logged.bags} match bags logged on ${water.name} in ${monthName(month)}`;
  if (percent >= 100) return `As it is, it is the heaviest of ${of}.`;
  return `As it is, it beats ${percent} in 100 of ${of}.`;
}

/** "2 h 05 min". */
export function durationWords(minutes: number): string {
  const whole = Math.ceil(minutes);
  return whole < 60 ? `${whole} min` : `${Math.floor(whole / 60)} h ${String(whole % 60).padStart(2, '0')} min`;
}

/** A weight nobody weighed, as coarse as the sheets tell it. */
function expected(grams: number, { weightUnit }: Pick<PaceWater, 'weightUnit'>): string {
  return expectedWeight(grams / 1000, weightUnit);
}

/** A weight in the venue's unit. */
export function weight(grams: number, { weightUnit }: Pick<PaceWater, 'weightUnit'>): string {
  return formatWeight(grams, { weight: weightUnit });
}
