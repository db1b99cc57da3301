import { type Day, daysBetween, formatDay } from '../../domain/day.ts';
import { localDay } from './today.ts';

/** A guide is printed anew more often than this: a clock that says otherwise is in doubt, or the copy is very old. */
const OLDEST_GUIDE_DAYS = 400;
const ONE_DAY_MILLISECONDS = 86_400_000;

/** What a phone's clock is held against. */
export interface ClockWitness {
  /** The day of the data of the guide on this phone: it is never later than today. */
  readonly guideDay: Day;
  /** When the last position was taken, by the satellites; milliseconds since 1970. */
  readonly fixAt?: number | undefined;
  /** The last day on which something was noted on this phone. */
  readonly lastNoted?: Day | undefined;
}

/** Why the phone's clock cannot be right, or may not be, in a sentence; null where nothing speaks against it. */
export function clockDoubt(now: Date, { guideDay, fixAt, lastNoted }: ClockWitness): string | null {
  const today = localDay(now);
  const says = `This phone’s clock says ${formatDay(today)}`;
  if (today < guideDay) return `${says}, and the guide on it has data to ${formatDay(guideDay)}.`;
  if (lastNoted !== undefined && today < lastNoted)
    return `${says}, and something was noted here on ${formatDay(lastNoted)}.`;
  if (fixAt !== undefined && Math.abs(fixAt - now.getTime()) > ONE_DAY_MILLISECONDS) {
    return `${says}, and its position was taken on ${formatDay(localDay(new Date(fixAt)))}.`;
  }
  if (daysBetween(guideDay, today) > OLDEST_GUIDE_DAYS) {
    return `${says}, and the guide on it has data to ${formatDay(guideDay)}: the clock is wrong, or this copy is over a year old.`;
  }
  return null;
}
