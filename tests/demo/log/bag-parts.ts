import type { SessionPart } from '../../../src/domain/session.ts';
import type { Chance } from '../chance.ts';

/** Exact, from the international pound (Weights and Measures Act 1985, Schedule 1). */
export const GRAMS_PER_OUNCE = 28.349523125;
const OUNCES_PER_POUND = 16;
/** The smallest carp a match angler nets. */
const SMALLEST_CARP_OUNCES = 14;
const BASE_YEAR = 2023;

/** What the split of a bag depends on. */
export interface BagDay {
  readonly waterDegreesC: number;
  readonly year: number;
  /** Whether this sheet had a column for counts. */
  readonly countsLogged: boolean;
}

/**
 * Splits a bag of whole ounces into silvers and carp: carp rule warm water and are often missing from cold; the carp
 * grow from year to year. The parts add up to the bag.
 */
export function splitBag(totalOunces: number, day: BagDay, chance: Chance): Record<string, SessionPart> {
  const carpOunces = carpOf(totalOunces, day, chance);
  const silversOunces = totalOunces - carpOunces;
  const meanCarp = (46 + 7 * (day.year - BASE_YEAR)) * Math.exp(0.15 * chance.normal());
  const meanSilver = 3.4 * Math.exp(0.25 * chance.normal());
  const carpCount = carpOunces === 0 ? 0 : Math.max(1, Math.round(carpOunces / meanCarp));
  const silversCount = silversOunces === 0 ? 0 : Math.max(1, Math.round(silversOunces / meanSilver));
  return {
    silvers: part(silversOunces, silversCount, day.countsLogged),
    carp: part(carpOunces, carpCount, day.countsLogged),
  };
}

function part(ounces: number, count: number, countsLogged: boolean): SessionPart {
  return { weightGrams: ounces * GRAMS_PER_OUNCE, ...(countsLogged ? { count } : {}) };
}

function carpOf(totalOunces: number, day: BagDay, chance: Chance): number {
  const cold = Math.max(0.03, Math.min(0.75, 0.82 - 0.045 * day.waterDegreesC));
  const isSmall = totalOunces < 4 * OUNCES_PER_POUND;
  const share = 1 / (1 + Math.exp(-(0.13 * (day.waterDegreesC - 12) + 0.9 * chance.normal())));
  const hasNone = chance.happens(isSmall ? Math.min(0.97, cold + 0.3) : cold);
  const ounces = Math.round(totalOunces * share);
  return hasNone || ounces < SMALLEST_CARP_OUNCES ? 0 : ounces;
}
