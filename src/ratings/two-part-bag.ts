import { LOG_ROOT_TWO_PI, logNormalCdf } from './engine/normal-cdf.ts';
import { evidenceOf, weaker } from './evidence.ts';
import { interval80 } from './interval.ts';
import type { WorthEstimate } from './worth.ts';

/**
 * A bag part that is often missing is told in two parts (Cragg, Econometrica 39, 1971): whether there is any, a probit, and
 * what it weighs where there is some, log-normal. One bound for all blanks bends both: carp that come in ones and twos or not
 * at all have no middle from which a blank is merely far.
 */

/** What a water's average peg has of being there, on the probit scale, and how far days and anglers spread it. */
export interface PresenceAtPar {
  readonly mean: number;
  /** Doubt about it: a peg's chance beside par's depends on how near to certain par is. */
  readonly sd: number;
  /** Of days and anglers together, the probit's own scatter of 1 included. */
  readonly spread: number;
}

/**
 * The worth of a part on the log scale: of the chance that there is any, times what it weighs then. A peg that has carp more
 * often mostly has more of them, and the two fits, each of which shrinks its own side, know nothing of that: their posteriors
 * are put together under one normal prior with the correlation that the log shows. Doubt by the delta method; evidence as
 * narrow against wide as of any worth.
 */
export function togetherWorth(
  weight: WorthEstimate,
  presence: WorthEstimate,
  par: PresenceAtPar,
  correlation = 0,
): WorthEstimate {
  const both = bivariate(weight, presence, correlation);
  const at = (probit: number) => logNormalCdf(probit / par.spread);
  const here = (par.mean + both.presence) / par.spread;
  const slopeAt = (probit: number) =>
    Math.exp(-0.5 * probit * probit - LOG_ROOT_TWO_PI - logNormalCdf(probit)) / par.spread;
  const slope = slopeAt(here);
  const ofPar = (slope - slopeAt(par.mean / par.spread)) * par.sd;
  const logWorth = both.weight + at(par.mean + both.presence) - at(par.mean);
  const spreadOf = (w: number, p: number, covariance: number) =>
    Math.sqrt(Math.max(0, w * w + slope * slope * p * p + 2 * slope * covariance));
  const sd = Math.hypot(spreadOf(both.weightSd, both.presenceSd, both.covariance), ofPar);
  const priorSd = spreadOf(weight.priorSd, presence.priorSd, correlation * weight.priorSd * presence.priorSd);
  // Where no session was, the table of presence, which knows all sessions, has said so.
  const isCapped = presence.evidence !== evidenceOf(presence.sd, presence.priorSd);
  const told = evidenceOf(sd, priorSd);
  return {
    logWorth,
    sd,
    priorSd,
    ...interval80(logWorth, sd),
    sessions: presence.sessions,
    evidence: isCapped ? weaker(told, presence.evidence) : told,
  };
}

/** What one side's posterior says beside its prior: precision, and precision times value. */
function saidByData({ logWorth, sd, priorSd }: WorthEstimate) {
  return { precision: Math.max(0, 1 / (sd * sd) - 1 / (priorSd * priorSd)), pull: logWorth / (sd * sd) };
}

function bivariate(weight: WorthEstimate, presence: WorthEstimate, correlation: number) {
  if (correlation === 0 || !(weight.priorSd > 0) || !(presence.priorSd > 0) || !(weight.sd > 0) || !(presence.sd > 0)) {
    const [weightSd, presenceSd] = [weight.sd, presence.sd];
    return { weight: weight.logWorth, presence: presence.logWorth, weightSd, presenceSd, covariance: 0 };
  }
  const [w, p] = [saidByData(weight), saidByData(presence)];
  const free = 1 - correlation * correlation;
  const a = w.precision + 1 / (free * weight.priorSd ** 2);
  const c = p.precision + 1 / (free * presence.priorSd ** 2);
  const b = -correlation / (free * weight.priorSd * presence.priorSd);
  const determinant = a * c - b * b;
  return {
    weight: (c * w.pull - b * p.pull) / determinant,
    presence: (a * p.pull - b * w.pull) / determinant,
    weightSd: Math.sqrt(c / determinant),
    presenceSd: Math.sqrt(a / determinant),
    covariance: -b / determinant,
  };
}

/** Correlations that are looked at. */
const CORRELATIONS = Array.from({ length: 39 }, (_, i) => (i - 19) / 20);
/** Months of a peg say nearly the same: together they count as one. */
const ALIKE = 12;
/** Prior sd of the correlation, about none: a handful of pegs tells nothing. */
const CORRELATION_SD = 0.5;

/**
 * How the two sides of a part's worth go together over pegs and months: the likeliest correlation of what both posteriors say,
 * by the normal densities of what the data alone would have told.
 */
export function correlationOfSides(weights: readonly WorthEstimate[], presences: readonly WorthEstimate[]): number {
  const told = weights.flatMap((weight, i) => {
    const presence = presences[i]!;
    const [w, p] = [saidByData(weight), saidByData(presence)];
    if (!(w.precision > 0) || !(p.precision > 0)) return [];
    // In units of the prior: the data's own value and the variance of prior and noise together.
    return [
      {
        w: w.pull / w.precision / weight.priorSd,
        p: p.pull / p.precision / presence.priorSd,
        varianceW: 1 + 1 / (w.precision * weight.priorSd ** 2),
        varianceP: 1 + 1 / (p.precision * presence.priorSd ** 2),
      },
    ];
  });
  const logDensity = (correlation: number) =>
    told.reduce(
      (sum, { w, p, varianceW, varianceP }) => {
        const determinant = varianceW * varianceP - correlation * correlation;
        const square = (varianceP * w * w - 2 * correlation * w * p + varianceW * p * p) / determinant;
        return sum - (0.5 / ALIKE) * (Math.log(determinant) + square);
      },
      -0.5 * (correlation / CORRELATION_SD) ** 2,
    );
  return CORRELATIONS.reduce((best, each) => (logDensity(each) > logDensity(best) ? each : best), 0);
}
