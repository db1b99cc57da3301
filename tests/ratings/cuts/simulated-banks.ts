import { addDays, type Day, daysBetween, type Month, monthOf } from '../../../src/domain/day.ts';
import type { BankHistory, BankVisit } from '../../../src/ratings/cuts/cut-spells.ts';
import { isGrowingDay } from '../../../src/ratings/cuts/growth-days.ts';
import { type ClearingDay, CUT_BELOW_METRES, growAndCut } from '../../demo/bank/clearing.ts';
import { type Chance, seededChance } from '../../demo/chance.ts';
import { examplePeg } from '../../domain/example-venue.ts';

/** A venue's banks as they were seen up to a day, and when each truly needed its next cut. */
export interface SimulatedBanks {
  readonly today: Day;
  readonly nestingMonths: readonly Month[];
  readonly histories: readonly BankHistory[];
  readonly nextDue: ReadonlyMap<string, Day>;
}

/** One look at a simulated bank, and on a cut since which day it had needed it, seen or not. */
interface TrueVisit extends BankVisit {
  readonly dueSince?: Day;
}

const PEGS = 60;
const BEFORE_YEARS = 12;
const AFTER_YEARS = 12;
const NESTING: readonly Month[] = [3, 4, 5, 6, 7, 8];

/** The ways banks are simulated, each unlike the forecast's own assumptions in another respect but the first. */
export const SIMULATIONS = {
  'log-normal growth, cut on the day': logNormalBanks,
  'steady growth, rounds each month, none in the nesting months': (years, seed) => grownBanks(years, seed, 30),
  'the demo’s banks, four rounds a year': quarterlyBanks,
} as const satisfies Record<string, (years: number, seed: number) => SimulatedBanks>;

/** Intervals drawn as the forecast assumes them, with another share of growth at rest than its grid holds. */
function logNormalBanks(years: number, seed: number): SimulatedBanks {
  const chance = seededChance(seed);
  const today = addDays('2026-01-01', chance.whole(0, 364));
  const usual = Math.log(chance.between(70, 300));
  const between = chance.between(0.15, 0.5);
  const scatter = chance.between(0.15, 0.45);
  const resting = chance.between(0.1, 0.6);
  return simulated(today, years, [], (start, end) => {
    const own = usual + between * chance.normal();
    const draw = () => Math.exp(own + scatter * chance.normal());
    const visits: TrueVisit[] = [];
    let left = draw() * chance.uniform();
    for (let day = start; day <= end; day = addDays(day, 1)) {
      left -= isGrowingDay(day) ? 1 : resting;
      if (left > 0) continue;
      visits.push({ day, cut: true, dueSince: day });
      left = draw();
    }
    return visits;
  });
}

/** A width that closes in day by day at the peg's own pace and is measured on every round; cut below a width when allowed. */
function grownBanks(years: number, seed: number, roundDays: number): SimulatedBanks {
  const chance = seededChance(seed);
  const today = addDays('2026-01-01', chance.whole(0, 364));
  const resting = chance.between(0.1, 0.5);
  return simulated(today, years, NESTING, (start, end) => {
    const pace = Math.exp(Math.log(0.01) + 0.35 * chance.normal());
    let width = chance.between(2.6, 4.6);
    let luck = 1;
    let dueSince: Day | null = null;
    return roundsBetween(start, end, roundDays, chance, (day, days) => {
      for (const each of days) {
        width -= pace * luck * (isGrowingDay(each) ? 1 : resting);
        if (width < 2.6) dueSince ??= each;
      }
      const cut = dueSince !== null && !NESTING.includes(monthOf(day));
      const since = dueSince ?? day;
      if (cut) {
        dueSince = null;
        width = 4.6 + chance.between(-0.4, 0.4);
        luck = Math.exp(0.25 * chance.normal());
      }
      return { day, cut, dueSince: since, clearWidthMetres: Math.max(0.8, Math.round(width * 10) / 10) };
    });
  });
}

/** The demo's own banks on its four rounds a year, run on for longer. */
function quarterlyBanks(years: number, seed: number): SimulatedBanks {
  const chance = seededChance(seed);
  const rounds = (from: number, to: number) =>
    Array.from({ length: to - from + 1 }, (_, index) =>
      ['02-22', '06-14', '09-20', '11-28'].map((day) => `${from + index}-${day}`),
    ).flat();
  const today = '2026-12-05';
  return simulated(today, years, NESTING, (start, end) => {
    const features = chance.happens(0.3) ? ['reeds'] : [];
    const days = rounds(Number(start.slice(0, 4)), Number(end.slice(0, 4)));
    const seen = growAndCut(examplePeg('1', { features }), days, NESTING, chance);
    let dueSince: Day | null = null;
    return seen.map(({ day, cut, foundMetres, clearance }, index): TrueVisit => {
      if (foundMetres < CUT_BELOW_METRES) dueSince ??= crossedOn(seen[index - 1], { day, foundMetres });
      const since = dueSince ?? day;
      if (cut) dueSince = null;
      return { day, cut, dueSince: since, clearWidthMetres: clearance.clearWidthMetres! };
    });
  });
}

/** Of a day's growth in summer, what a bank grows on a day at rest. */
const GROWTH_AT_REST = 0.2;

/** The day between two rounds on which a bank came to need a cut: it closes in day by day, hardly in winter. */
function crossedOn(
  before: ClearingDay | undefined,
  { day, foundMetres }: Pick<ClearingDay, 'day' | 'foundMetres'>,
): Day {
  if (before === undefined) return day;
  const was = before.cut ? before.clearance.clearWidthMetres! : before.foundMetres;
  const days = Array.from({ length: daysBetween(before.day, day) }, (_, index) => addDays(before.day, index + 1));
  const growth = (each: Day) => (isGrowingDay(each) ? 1 : GROWTH_AT_REST);
  const perGrowth = (was - foundMetres) / days.reduce((sum, each) => sum + growth(each), 0);
  let width = was;
  for (const each of days) {
    width -= perGrowth * growth(each);
    if (width < CUT_BELOW_METRES) return each;
  }
  return day;
}

function simulated(
  today: Day,
  years: number,
  nestingMonths: readonly Month[],
  visitsOf: (start: Day, end: Day) => readonly TrueVisit[],
): SimulatedBanks {
  const first = addDays(today, -Math.round(years * 365.25));
  const all = Array.from({ length: PEGS }, (_, index) => ({
    peg: String(index + 1),
    // Run in before the records begin, so that they begin at any point of an interval.
    visits: visitsOf(addDays(first, -365 * Math.min(4, BEFORE_YEARS)), addDays(today, 365 * AFTER_YEARS)),
  }));
  return {
    today,
    nestingMonths,
    histories: all.map(({ peg, visits }) => ({
      peg,
      visits: visits.filter(({ day }) => day >= first && day <= today).map(({ dueSince: _, ...visit }) => visit),
    })),
    nextDue: new Map(
      all.flatMap(({ peg, visits }) => {
        const next = visits.find(({ day, cut }) => cut && day > today);
        return next === undefined ? [] : [[peg, next.dueSince ?? next.day] as const];
      }),
    ),
  };
}

function roundsBetween(
  start: Day,
  end: Day,
  usualDays: number,
  chance: Chance,
  visit: (day: Day, days: readonly Day[]) => TrueVisit,
): readonly TrueVisit[] {
  const visits: TrueVisit[] = [];
  for (let from = start; from < end; ) {
    const gap = Math.max(5, Math.round(usualDays * chance.between(0.7, 1.3)));
    visits.push(
      visit(
        addDays(from, gap),
        Array.from({ length: gap }, (_, index) => addDays(from, index + 1)),
      ),
    );
    from = addDays(from, gap);
  }
  return visits;
}
