import type { Day } from '../../domain/day.ts';

/** Days of two kinds: a bank grows from April to September and rests for the other six months (common practice, no source). */
export interface GrowthDays {
  readonly growing: number;
  readonly resting: number;
}

/** From 1 April to 30 September. */
const GROWING_DAYS_A_YEAR = 183;
const MILLISECONDS_PER_DAY = 86_400_000;

/** The growing and the resting days that follow a day, for any number of days after it. */
export function growthAfter(from: Day): (days: number) => GrowthDays {
  const start = Date.parse(`${from}T00:00:00Z`) / MILLISECONDS_PER_DAY;
  const before = growingDaysUpTo(start);
  return (days) => {
    const growing = growingDaysUpTo(start + days) - before;
    return { growing, resting: days - growing };
  };
}

/** Whether banks grow on a day. */
export function isGrowingDay(day: Day): boolean {
  const monthAndDay = day.slice(5);
  return monthAndDay >= '04-01' && monthAndDay <= '09-30';
}

/** Days of growth that go by, where a resting day counts as a share of a growing one. */
export function growthOf({ growing, resting }: GrowthDays, restingShare: number): number {
  return growing + restingShare * resting;
}

/** @param epochDay days since 1 January 1970 */
function growingDaysUpTo(epochDay: number): number {
  const year = new Date(epochDay * MILLISECONDS_PER_DAY).getUTCFullYear();
  const sinceMarch = epochDay - Date.UTC(year, 2, 31) / MILLISECONDS_PER_DAY;
  return GROWING_DAYS_A_YEAR * year + Math.min(Math.max(sinceMarch, 0), GROWING_DAYS_A_YEAR);
}
