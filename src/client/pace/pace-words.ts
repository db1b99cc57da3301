import type { DrawData, DrawHours } from '../../atlas/draw-page.ts';
import { expectedWeight } from '../../atlas/expected-weight.ts';
import type { Month } from '../../domain/day.ts';
import { formatWeight } from '../../domain/weight.ts';
import { heavierThan, type Pace } from '../../match-day/pace.ts';
import { monthWords } from '../../words/day-words.ts';
import type { Say } from '../../words/say.ts';
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
export function targetWords(target: Target, water: PaceWater, month: Month, say: Say): string {
  const grams = targetGrams(target, water, month);
  if (target.kind === 'own') return say('pace.ownTarget', { weight: weight(target.grams, water) });
  if (grams === null) return say('pace.noTarget', { month: monthWords(month, say) });
  const matches = water.framing[month]!.matches;
  return say(target.kind === 'frame' ? 'pace.toFrameIn' : 'pace.toWinIn', {
    weight: expected(grams, water),
    month: monthWords(month, say),
    matches,
  });
}

/** By what a bag is laid over the hours, after a comma, and how much that is worth. */
export function spreadWords(known: DrawHours | undefined, hours: number, say: Say): string {
  if (known === undefined) return say('pace.spreadEvenly', { hours });
  const { about, bags, matches, isThin, matchHours } = known;
  return [
    say('pace.spreadByLog', { about, bags, matches }),
    ...(hours === matchHours ? [] : [say('pace.otherLength', { hours: matchHours })]),
    ...(isThin ? [say('pace.thin')] : []),
  ].join(' ');
}

/** How it goes, a sentence each: what is caught, what is needed, where it would end, where it stands among bags logged. */
export function paceLines(pace: Pace, aim: number | null, water: PaceWater, month: Month, say: Say): readonly string[] {
  return [
    timeWords(pace, say),
    ...(aim === null ? [] : [neededWords(pace, water, say)]),
    ...(pace.endGrams === null || pace.state !== 'fishing' || pace.caughtGrams === 0
      ? []
      : [say('pace.endsAt', { weight: expected(pace.endGrams, water) })]),
    ...(pace.caughtGrams === 0 ? [] : [standsWords(pace.caughtGrams, water, month, say)]),
  ];
}

function timeWords({ state, minutesLeft }: Pace, say: Say): string {
  if (state === 'before') return say('pace.notAllIn');
  if (state === 'over') return say('pace.allOut');
  return say('pace.left', { time: durationWords(minutesLeft) });
}

function neededWords({ stillGrams, neededAnHour, state }: Pace, water: PaceWater, say: Say): string {
  if (stillGrams === 0) return say('pace.reached');
  if (state === 'over' || neededAnHour === null) return say('pace.short', { weight: weight(stillGrams, water) });
  return say('pace.toGo', { weight: weight(stillGrams, water), each: weight(neededAnHour, water) });
}

function standsWords(grams: number, water: PaceWater, month: Month, say: Say): string {
  const of = monthWords(month, say);
  const logged = water.logged[month];
  if (logged === undefined) return say('pace.tooFew', { month: of });
  const percent = Math.round(heavierThan(grams, logged.percentiles));
  const values = { bags: logged.bags, water: water.name, month: of };
  return percent >= 100 ? say('pace.heaviest', values) : say('pace.beats', { ...values, percent });
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
