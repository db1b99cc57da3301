import { addDays, type Day } from './day.ts';
import { type Check, checkOf } from './due.ts';
import { type Hazard, isCurrent } from './hazard.ts';
import { hazardKind, riskBand, riskOf } from './risk.ts';
import type { InspectionIntervals, RiskBand } from './venue.ts';

/**
 * When a hazard was last looked at and is due again: by the venue's interval for hazards, or sooner where its kind changes
 * faster. A day on which it was found worse, or on which something was done about it, is a look too.
 */
export function hazardCheck(hazard: Hazard, inspection: Pick<InspectionIntervals, 'hazardDays'>): Check {
  const { checkedOn, worsenedOn, controlledOn, foundOn } = hazard;
  const last = [checkedOn, worsenedOn, controlledOn].filter((day) => day !== undefined).sort();
  const everyDays = Math.min(inspection.hazardDays, hazardKind(hazard.kind).checkEveryDays ?? Number.POSITIVE_INFINITY);
  return checkOf(last.at(-1), foundOn, everyDays);
}

/** The day by which a hazard is to be dealt with, and the band that sets it. */
export interface ActBy {
  readonly on: Day;
  readonly since: Day;
  readonly band: string;
  readonly withinDays: number;
}

/**
 * Turns "act within the month" into a day: the band of the score that now stands, counted from the day the hazard was
 * found or last found worse. Null where it is cleared, or its band sets no time.
 */
export function actBy(hazard: Hazard, bands: readonly RiskBand[]): ActBy | null {
  if (!isCurrent(hazard)) return null;
  const { before, after } = riskOf(hazard, bands);
  const band = riskBand((after ?? before).score, bands);
  if (band?.actWithinDays === undefined) return null;
  const since = hazard.worsenedOn ?? hazard.foundOn;
  return { on: addDays(since, band.actWithinDays), since, band: band.name, withinDays: band.actWithinDays };
}
