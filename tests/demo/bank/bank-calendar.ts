import { addDays, type Day } from '../../../src/domain/day.ts';

/** A walk of the bailiff. */
export interface RoundDay {
  readonly day: Day;
  readonly ref: string;
}

/** When the bank was walked, which pegs a walk did not reach, and since when the pegs below a line are closed. */
export interface BankCalendar {
  /** In order of time; never empty. */
  readonly rounds: readonly RoundDay[];
  readonly isPassedOver: (round: RoundDay, water: string, peg: string) => boolean;
  readonly closedSince: Day;
}

/** The demo's: quarterly rounds, and a last one a week before the guide's day that did not get all the way round. */
export const DEMO_CALENDAR: BankCalendar = {
  rounds: [
    { day: '2024-02-24', ref: 'w4tz' },
    { day: '2024-06-15', ref: 'p9k2' },
    { day: '2024-09-21', ref: 'd7mc' },
    { day: '2024-11-30', ref: 'h3xe' },
    { day: '2025-02-22', ref: 'q8vb' },
    { day: '2025-06-14', ref: 't5rn' },
    { day: '2025-09-20', ref: 'c2yf' },
    { day: '2025-11-29', ref: 'm6ja' },
    { day: '2026-02-21', ref: 'z4gu' },
    { day: '2026-06-13', ref: 'b8sk' },
    { day: '2026-09-19', ref: 'e3pw' },
    { day: '2026-11-14', ref: 'k7q2' },
  ],
  isPassedOver: (round, water, peg) => {
    if (round.day !== '2026-11-14') return false;
    const number = Number(peg);
    return (
      (water === 'eelback' && number >= 9 && number <= 13) || (water === 'kiln-pool' && number >= 26 && number <= 28)
    );
  },
  closedSince: '2025-02-03',
};

const QUARTER_DAYS = 91;
const ROUNDS_AT_MOST = 12;

/** A calendar for a log of any span: the last round a week before its end, the others a quarter apart before that. */
export function quarterlyCalendar(firstDay: Day, lastDay: Day): BankCalendar {
  const last = addDays(lastDay, -7);
  const days = Array.from({ length: ROUNDS_AT_MOST }, (_, i) => addDays(last, -i * QUARTER_DAYS));
  const rounds = days
    .filter((day, i) => i === 0 || day >= firstDay)
    .reverse()
    .map((day, i) => ({ day, ref: `r${String(i + 1).padStart(2, '0')}` }));
  return {
    rounds,
    // Every eleventh peg was missed the last time round, where there was a time before it.
    isPassedOver: (round, _water, peg) => rounds.length > 1 && round.day === last && Number(peg) % 11 === 0,
    closedSince: firstDay,
  };
}

/** The last round that reached a peg. */
export function lastVisit(calendar: BankCalendar, water: string, peg: string): RoundDay {
  return calendar.rounds.findLast((round) => !calendar.isPassedOver(round, water, peg))!;
}
