import { addDays, type Day, daysBetween } from './day.ts';

/** How a dated check stands on a day. `unknown` is for a check nobody has recorded: never "safe". */
export type CheckState = 'fresh' | 'out-of-date' | 'unknown';

/** When something was last looked at and when it is due again. */
export interface Check {
  readonly checkedOn: Day | null;
  /** Null where it was never checked: it is due now. */
  readonly dueOn: Day | null;
  readonly intervalDays: number;
}

/** A check and the day it falls due. A finding counts as a look: `foundOn` serves where nothing later was recorded. */
export function checkOf(checkedOn: Day | undefined, foundOn: Day | undefined, intervalDays: number): Check {
  const last = checkedOn ?? foundOn ?? null;
  return { checkedOn: last, dueOn: last === null ? null : addDays(last, intervalDays), intervalDays };
}

/** How the check stands on the day it is read. On the due day itself it is still fresh. */
export function checkState(check: Check, onDay: Day): CheckState {
  if (check.dueOn === null) return 'unknown';
  return daysBetween(onDay, check.dueOn) >= 0 ? 'fresh' : 'out-of-date';
}

/** Days by which a check is overdue on a day; 0 or below while it is not, infinite where there is none. */
export function daysOverdue(check: Check, onDay: Day): number {
  return check.dueOn === null ? Number.POSITIVE_INFINITY : daysBetween(check.dueOn, onDay);
}
