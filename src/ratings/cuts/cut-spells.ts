import { type Day, daysBetween } from '../../domain/day.ts';
import { type GrowthDays, growthAfter, isGrowingDay } from './growth-days.ts';

/** One look at a peg's bank. */
export interface BankVisit {
  readonly day: Day;
  readonly cut: boolean;
  /** Clear width as measured; after the cut where one was made. */
  readonly clearWidthMetres?: number;
}

/** What the rounds tell of one peg's bank. */
export interface BankHistory {
  readonly peg: string;
  readonly visits: readonly BankVisit[];
}

/** How far the bank had closed in since the cut, when it was last measured before the next. */
export interface ClosingIn {
  readonly metres: number;
  readonly after: GrowthDays;
}

/** The time from one cut to the next, or to the present where there is none yet. */
export interface CutSpell {
  readonly from: Day;
  readonly lasted: GrowthDays;
  /** False while it is unfinished: then it lasts longer than it has, and nothing more is known (right-censored). */
  readonly isEnded: boolean;
  /** Whether it ended on a day on which banks grow. */
  readonly endedGrowing: boolean;
  readonly closingIn: ClosingIn | null;
}

/** A width measured sooner after the cut shows nothing of the pace. */
const LEAST_DAYS_OF_PACE = 14;

/** A peg's spells in order of time, the unfinished one last; none for a peg that was never cut. What comes after the present does not count. */
export function cutSpells({ visits }: BankHistory, today: Day): readonly CutSpell[] {
  const seen = visits.filter(({ day }) => day <= today).sort((a, b) => a.day.localeCompare(b.day));
  const cuts = [...new Set(seen.filter(({ cut }) => cut).map(({ day }) => day))];
  return cuts.map((from, index): CutSpell => {
    const next = cuts[index + 1];
    const end = next ?? today;
    return {
      from,
      lasted: growthAfter(from)(daysBetween(from, end)),
      isEnded: next !== undefined,
      endedGrowing: isGrowingDay(end),
      closingIn: closingIn(
        seen.filter(({ day, cut }) => day >= from && (day < end || next === undefined) && (!cut || day === from)),
      ),
    };
  });
}

/** @param visits the cut, then the looks between it and the next */
function closingIn([first, ...between]: readonly BankVisit[]): ClosingIn | null {
  const last = between.filter(({ clearWidthMetres, cut }) => !cut && clearWidthMetres !== undefined).at(-1);
  if (first?.clearWidthMetres === undefined || last?.clearWidthMetres === undefined) return null;
  const days = daysBetween(first.day, last.day);
  if (days < LEAST_DAYS_OF_PACE) return null;
  return { metres: first.clearWidthMetres - last.clearWidthMetres, after: growthAfter(first.day)(days) };
}
