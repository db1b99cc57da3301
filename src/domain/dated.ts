import type { Day } from './day.ts';

/** The days on which a fact holds, both included; always, where neither is given. */
export interface Dated {
  readonly from?: Day;
  readonly until?: Day;
}

/** Whether a fact holds on a day. */
export function holdsOn({ from, until }: Dated, day: Day): boolean {
  return (from === undefined || from <= day) && (until === undefined || day <= until);
}

/** Whether two facts hold together on some day. */
export function overlap(a: Dated, b: Dated): boolean {
  const aBeforeB = a.until !== undefined && b.from !== undefined && a.until < b.from;
  const bBeforeA = b.until !== undefined && a.from !== undefined && b.until < a.from;
  return !aBeforeB && !bBeforeA;
}

/** Whether a fact says on which days it holds. */
export function hasDays({ from, until }: Dated): boolean {
  return from !== undefined || until !== undefined;
}
