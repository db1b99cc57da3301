import { addDays, type Day, type Month, monthOf } from '../../domain/day.ts';
import { nestingWait } from '../../domain/nesting.ts';
import type { BankHistory } from './cut-spells.ts';

/** After this long nobody can tell a first walk after the nesting months from any other. */
const LONGEST_DAYS = 90;

/** When cuts are made that come due in the nesting months. */
export interface NestingBacklog {
  /**
   * For a day in the nesting months, or after them and before the backlog is cut: the last day before those months, and the
   * soonest and the latest day on which the backlog is cut, one in ten apart. Null for any other day.
   */
  readonly around: (day: Day) => { readonly before: Day; readonly soonest: Day; readonly latest: Day } | null;
}

/** What comes due in the nesting months is cut on the first walk after them. Learns how soon these walks come here. */
export function nestingBacklog(
  histories: readonly BankHistory[],
  today: Day,
  nestingMonths: readonly Month[],
): NestingBacklog {
  const sinceNesting = remembered((day: Day) => daysSinceNesting(day, nestingMonths));
  const delays = histories
    .flatMap(({ visits }) =>
      firstLooks(
        visits.map(({ day }) => day).filter((day) => day <= today),
        sinceNesting,
      ),
    )
    .sort((a, b) => a - b);
  const at = (share: number) => delays[Math.round(share * (delays.length - 1))] ?? 0;
  const [soonest, latest] = [at(0.1), at(0.9)];
  const spells = remembered((month: string) => {
    const wait = nestingWait(`${month}-01`, nestingMonths);
    if (wait === null) return null;
    return { before: wait.before, soonest: addDays(wait.from, soonest), latest: addDays(wait.from, latest) };
  });
  return {
    around: (day) => {
      const within = spells(day.slice(0, 7)) ?? spells(addDays(day, -latest - 1).slice(0, 7));
      return within !== null && day <= within.latest ? within : null;
    },
  };
}

/** Days from the end of the nesting months to the first look after them, for each time there is one soon. */
function firstLooks(days: readonly Day[], sinceNesting: (day: Day) => number | null): readonly number[] {
  const sorted = [...days].sort();
  return sorted.flatMap((day, index) => {
    const before = sorted[index - 1];
    const since = sinceNesting(day);
    return before === undefined || since === null || before > addDays(day, -since - 1) ? [] : [since];
  });
}

/** Days from the end of the nesting months to a day outside them; null within them and long after. */
function daysSinceNesting(day: Day, nestingMonths: readonly Month[]): number | null {
  if (nestingMonths.length === 0 || new Set(nestingMonths).size >= 12) return null;
  for (let back = 0; back <= LONGEST_DAYS; back += 1) {
    if (nestingMonths.includes(monthOf(addDays(day, -back)))) return back === 0 ? null : back - 1;
  }
  return null;
}

/** The same answer for the same question, worked out once. */
function remembered<T>(work: (key: string) => T): (key: string) => T {
  const known = new Map<string, T>();
  return (key) => {
    const found = known.get(key);
    if (found !== undefined) return found;
    const worked = work(key);
    known.set(key, worked);
    return worked;
  };
}
