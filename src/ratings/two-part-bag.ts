import { LOG_ROOT_TWO_PI, logNormalCdf } from './engine/normal-cdf.ts';
import { evidenceOf, weaker } from './evidence.ts';
import { interval80 } from './interval.ts';
import type { ReturnWithDoubt } from './returns.ts';

/**
 * A bag part that is often missing is told in two parts (Cragg, Econometrica 39, 1971): whether there is any, a probit, and
 * what it weighs where there is some, log-normal. One bound for all blanks bends both: carp that come in ones and twos or not
 * at all have no middle from which a blank is merely far.
 */

/** What a water's average peg has of being there, on the probit scale, and how far days and anglers spread it. */
export interface PresenceAtPar {
  readonly mean: number;
  /** Of days and anglers together, the probit's own scatter of 1 included. */
  readonly spread: number;
}

/**
 * The return of a part on the log scale: of the chance that there is any, times what it weighs then. Doubt by the delta method,
 * the two fits being of different rows or of different sides of them; evidence as narrow against wide as of any return.
 */
export function togetherReturn(
  weight: ReturnWithDoubt,
  presence: ReturnWithDoubt,
  par: PresenceAtPar,
): ReturnWithDoubt {
  const at = (probit: number) => logNormalCdf(probit / par.spread);
  const here = (par.mean + presence.logReturn) / par.spread;
  const slope = Math.exp(-0.5 * here * here - LOG_ROOT_TWO_PI - logNormalCdf(here)) / par.spread;
  const logReturn = weight.logReturn + at(par.mean + presence.logReturn) - at(par.mean);
  const sd = Math.hypot(weight.sd, slope * presence.sd);
  const priorSd = Math.hypot(weight.priorSd, slope * presence.priorSd);
  // Where no session was, the table of presence, which knows all sessions, has said so.
  const isCapped = presence.evidence !== evidenceOf(presence.sd, presence.priorSd);
  const told = evidenceOf(sd, priorSd);
  return {
    logReturn,
    sd,
    priorSd,
    ...interval80(logReturn, sd),
    sessions: presence.sessions,
    evidence: isCapped ? weaker(told, presence.evidence) : told,
  };
}
