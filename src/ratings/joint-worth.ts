import type { Month } from '../domain/day.ts';
import { fitBag } from './bag-model.ts';
import type { LinearCombination } from './engine/latent-model.ts';
import { firstLook, type Ground, groundOf } from './first-look.ts';
import type { RatedPeg, RatedVenue } from './rated-venue.ts';
import { TERM } from './rating-model.ts';
import type { Ratings } from './ratings.ts';
import { worthCombinations } from './worth-combinations.ts';

/** What the log knows of the worth of some pegs in a month, together: log multiples of par, jointly normal. */
export interface JointPegWorth {
  readonly logMean: readonly number[];
  /** Row by row, in the order of the pegs asked for. */
  readonly covariance: Float64Array;
}

/**
 * The joint posterior of pegs' worth in a month by the model of the whole bag. Two pegs that share a feature share its doubt,
 * so sections cannot be compared by the published intervals of single pegs: Cov(a, b) = (Var a + Var b − Var(a − b)) / 2.
 * @param ratings Of this log, where they are there: then nothing has to be learned again.
 */
export function jointPegWorth(
  venue: RatedVenue,
  pegs: readonly RatedPeg[],
  month: Month,
  ratings?: Pick<Ratings, 'dnwLesson' | 'fits'>,
): JointPegWorth {
  const { lesson, asked, start } = groundIn(ratings) ?? groundOf(firstLook(venue));
  const choice = { dnw: lesson.mechanism ?? undefined, asked };
  const { model, fit } = fitBag(venue, 'total', choice, start === null ? {} : { start });
  const { ofPeg } = worthCombinations(venue, model);
  const own = pegs.map((peg) => ofPeg(peg, month - 1));
  const pairs = pegs.flatMap((_, i) => pegs.slice(0, i).map((_, j) => difference(own[i]!, own[j]!)));
  const { mean, sd } = fit.posterior([...own, ...pairs]);
  const size = pegs.length;
  const covariance = new Float64Array(size * size);
  let pair = size;
  for (let i = 0; i < size; i++) {
    covariance[i * size + i] = sd[i]! ** 2;
    for (let j = 0; j < i; j++) {
      const both = (sd[i]! ** 2 + sd[j]! ** 2 - sd[pair++]! ** 2) / 2;
      covariance[i * size + j] = both;
      covariance[j * size + i] = both;
    }
  }
  return { logMean: Array.from(mean.subarray(0, size)), covariance };
}

/** What ratings went by. */
function groundIn(ratings: Pick<Ratings, 'dnwLesson' | 'fits'> | undefined): Ground | null {
  const total = ratings?.fits.find(({ of }) => of === 'total');
  if (ratings === undefined || total === undefined) return null;
  const holds = (term: string) => total.start.sd[term] !== undefined;
  const asked = { pegYears: holds(TERM.pegYear), waterYears: holds(TERM.waterYear) };
  return { lesson: ratings.dnwLesson, asked, start: total.start };
}

/** One worth less another; on one water what both are compared with drops out. */
function difference(a: LinearCombination, b: LinearCombination): LinearCombination {
  const minus = (effects: LinearCombination['effects']) =>
    effects.map((effect) => ({ ...effect, weight: -effect.weight }));
  const own = [...a.effects, ...minus(b.effects)];
  if (a.minus === b.minus) return { effects: own };
  return { effects: [...own, ...minus(a.minus?.effects ?? []), ...(b.minus?.effects ?? [])] };
}
