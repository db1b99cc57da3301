import type { Day } from './day.ts';
import type { Notice } from './notice.ts';
import type { PegKey } from './peg.ts';

export type NoticeState = 'live' | 'upcoming' | 'past' | 'replaced';

/** The days that decide how a notice stands. */
export interface NoticeDays {
  readonly from: Day;
  readonly until?: Day | undefined;
  /** First day of the notice that takes this one's place. */
  readonly replacedFrom?: Day | undefined;
}

/**
 * How a notice stands on the day it is read. A notice that takes another's place does so from its own first day on: until
 * then the older one still holds.
 */
export function noticeState(notice: Notice, all: readonly Notice[], onDay: Day): NoticeState {
  const { from, until } = notice;
  return noticeStateOn({ from, until, replacedFrom: replacedFrom(notice, all) ?? undefined }, onDay);
}

/** The same by its days alone, for a page that carries no more than those. */
export function noticeStateOn({ from, until, replacedFrom }: NoticeDays, onDay: Day): NoticeState {
  if (replacedFrom !== undefined && replacedFrom <= onDay) return 'replaced';
  if (from > onDay) return 'upcoming';
  return until !== undefined && until < onDay ? 'past' : 'live';
}

/** Day from which a notice no longer holds because another takes its place, or because it was taken back. */
export function replacedFrom(notice: Notice, all: readonly Notice[]): Day | null {
  const days = all.filter((other) => other.replaces === notice.id).map((other) => other.from);
  const ends = [...days, notice.cancelledOn].filter((day) => day !== undefined).sort();
  return ends[0] ?? null;
}

/** Whether a notice speaks of a peg: by name, by its water, or because it is for the whole venue. */
export function concernsPeg(notice: Pick<Notice, 'waters' | 'pegs'>, water: string, peg: PegKey): boolean {
  if (notice.pegs.length > 0) return notice.pegs.includes(peg);
  return concernsWater(notice, water);
}

/** Whether a notice speaks of a water, or of a peg on it. */
export function concernsWater(notice: Pick<Notice, 'waters' | 'pegs'>, water: string): boolean {
  if (notice.pegs.some((peg) => peg.startsWith(`${water}/`))) return true;
  if (notice.waters.length > 0) return notice.waters.includes(water);
  return notice.pegs.length === 0;
}
