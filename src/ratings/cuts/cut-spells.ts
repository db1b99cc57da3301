import { addDays, type Day, daysBetween } from '../../domain/day.ts';
import { type GrowthDays, growthAfter } from './growth-days.ts';

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

/** How far the bank had closed in since the cut, when it was measured on the way to the next. */
export interface ClosingIn {
  readonly metres: number;
  readonly after: GrowthDays;
}

/** The time from one cut to the next, or to the present where there is none yet. */
export interface CutSpell {
  readonly from: Day;
  /** To the cut, or to the last look where there is none yet. */
  readonly lasted: GrowthDays;
  /** To the last look at which it was not cut: it needed no cut by then. None at the cut it began with. */
  readonly uncutUntil: GrowthDays;
  /** False while it is unfinished: then it lasts longer than it has, and nothing more is known (right-censored). */
  readonly isEnded: boolean;
  /** Each width measured on the way, the latest last. */
  readonly closingIn: readonly ClosingIn[];
}

/** The time from the first look to the first cut, part of a spell that began before the records; or to the last look. */
export interface OpeningSpell {
  /** To the first cut, or to the last look where there is none yet. */
  readonly lasted: GrowthDays;
  /** To the last look before it. */
  readonly uncutUntil: GrowthDays;
  readonly isEnded: boolean;
}

/** What is known before a peg's first cut; null where the first look is the cut itself, or its looks are not known. */
export function openingSpell({ visits }: BankHistory, today: Day, looks: readonly Day[] | null): OpeningSpell | null {
  const first = looks?.[0];
  if (looks === null || first === undefined) return null;
  const cut = visits
    .filter((visit) => visit.cut && visit.day <= today)
    .map(({ day }) => day)
    .sort()[0];
  const uncut = cut === undefined ? lastLook(looks, first, today) : lookBefore(looks, first, cut);
  if (cut === first) return null;
  const growth = growthAfter(first);
  return {
    lasted: growth(daysBetween(first, cut ?? uncut)),
    uncutUntil: growth(daysBetween(first, uncut)),
    isEnded: cut !== undefined,
  };
}

/** A width measured sooner after the cut shows nothing of the pace. */
const MIN_DAYS_OF_PACE = 14;

/**
 * A peg's spells in order of time, the unfinished one last; none for a peg that was never cut. What comes after the present
 * does not count.
 * @param looks the days on which it might have been cut, in order; null where it is cut on the day it needs it
 */
export function cutSpells({ visits }: BankHistory, today: Day, looks: readonly Day[] | null): readonly CutSpell[] {
  const seen = visits.filter(({ day }) => day <= today).sort((a, b) => a.day.localeCompare(b.day));
  const cuts = [...new Set(seen.filter(({ cut }) => cut).map(({ day }) => day))];
  return cuts.map((from, index): CutSpell => {
    const next = cuts[index + 1];
    const uncut = next === undefined ? lastLook(looks, from, today) : lookBefore(looks, from, next);
    const growth = growthAfter(from);
    return {
      from,
      lasted: growth(daysBetween(from, next ?? uncut)),
      uncutUntil: growth(daysBetween(from, uncut)),
      isEnded: next !== undefined,
      closingIn: closingIn(
        seen.filter(({ day, cut }) => day >= from && (next === undefined || day < next) && (!cut || day === from)),
      ),
    };
  });
}

/** The last look before a cut; the day before it where every day counts as one. */
function lookBefore(looks: readonly Day[] | null, from: Day, cut: Day): Day {
  if (looks === null) return addDays(cut, -1);
  return looks.findLast((day) => from <= day && day < cut) ?? from;
}

function lastLook(looks: readonly Day[] | null, from: Day, today: Day): Day {
  return looks === null ? today : (looks.findLast((day) => from <= day && day <= today) ?? from);
}

/** @param visits the cut, then the looks between it and the next */
function closingIn([first, ...between]: readonly BankVisit[]): readonly ClosingIn[] {
  const { day: from, clearWidthMetres: cutTo } = first ?? {};
  if (from === undefined || cutTo === undefined) return [];
  const growth = growthAfter(from);
  return between.flatMap(({ day, cut, clearWidthMetres }) => {
    const days = daysBetween(from, day);
    return cut || clearWidthMetres === undefined || days < MIN_DAYS_OF_PACE
      ? []
      : [{ metres: cutTo - clearWidthMetres, after: growth(days) }];
  });
}
