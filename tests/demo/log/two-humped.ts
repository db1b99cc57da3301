import type { Peg } from '../../../src/domain/peg.ts';
import { logNormalCdf, normalCdf } from '../../../src/ratings/engine/normal-cdf.ts';
import type { Chance } from '../chance.ts';
import { type Truth, trueFeatureMonths, truePars, truePegMonths } from './truth.ts';

/** Of the chance that a bag holds carp, on the probit scale; what a peg, a day and an angler give weighs more there than in kilograms. */
const PRESENCE = { level: 0.3, peg: 1.5, event: 0.8, angler: 0.5 };
/** Of what they weigh where there are any, on the log scale. */
const WEIGHT = { level: 1, peg: 0.5, event: 0.5, angler: 0.5, scatter: 0.5 };

/** Grams of carp in one bag: none, or some. */
export function carpOf(truth: Truth, event: string, angler: number, ofPeg: number, chance: Chance): number {
  const day = truth.events[event]!;
  const probit = PRESENCE.level + PRESENCE.peg * ofPeg + PRESENCE.event * day + PRESENCE.angler * angler;
  const isThere = chance.happens(normalCdf(probit));
  const log = WEIGHT.level + WEIGHT.peg * ofPeg + WEIGHT.event * day + WEIGHT.angler * angler;
  const grams = 1000 * Math.exp(log + WEIGHT.scatter * chance.normal());
  return isThere ? grams : 0;
}

/** True worth of carp: of the chance that there are any, times what they weigh then, each over par's. */
export function trueCarp(truth: Truth, pegs: readonly Peg[], sd: { readonly event: number; readonly angler: number }) {
  const spread = Math.hypot(1, PRESENCE.event * sd.event, PRESENCE.angler * sd.angler);
  const pars = new Map(truePars(truth, pegs).map(({ water, month, mean }) => [`${water} ${month}`, mean - truth.mean]));
  const waters = [...new Set(pegs.map(({ water }) => water))];
  const logWorth = (own: number, par: number) => {
    const at = (sum: number) => logNormalCdf((PRESENCE.level + PRESENCE.peg * sum) / spread);
    return WEIGHT.peg * own + at(par + own) - at(par);
  };
  const meanPar = (month: number) =>
    waters.reduce((sum, water) => sum + pars.get(`${water} ${month}`)!, 0) / waters.length;
  return {
    features: trueFeatureMonths(truth, pegs).map((row) => ({
      ...row,
      logWorth: logWorth(row.logWorth, meanPar(row.month)),
    })),
    pegs: truePegMonths(truth, pegs).map((row) => ({
      ...row,
      logWorth: logWorth(row.logWorth, pars.get(`${row.water} ${row.month}`)!),
    })),
  };
}
