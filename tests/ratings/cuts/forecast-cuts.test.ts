import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addDays, daysBetween } from '../../../src/domain/day.ts';
import type { BankHistory } from '../../../src/ratings/cuts/cut-spells.ts';
import { forecastCuts } from '../../../src/ratings/cuts/forecast-cuts.ts';

const every = (peg: string, days: number, times: number, first = '2022-04-01'): BankHistory => ({
  peg,
  visits: Array.from({ length: times }, (_, index) => ({ day: addDays(first, days * index), cut: true })),
});
const lastOf = ({ visits }: BankHistory) => visits.at(-1)!.day;
const steady = [every('a', 365, 5), every('b', 380, 5), every('c', 350, 5)];
const TODAY = '2026-09-01';
const forecastOf = (peg: string, histories: readonly BankHistory[], today = TODAY) =>
  forecastCuts(histories, today, []).find((one) => one.peg === peg)!;

describe('the next cut', () => {
  it('falls near the usual interval of pegs that are cut once a year', () => {
    const { lastCut, dueOn, earliest, latest, ownIntervals } = forecastOf('a', steady);
    expect(ownIntervals).toBe(4);
    expect(lastCut).toBe(lastOf(steady[0]!));
    expect(daysBetween(lastCut, dueOn)).toBeGreaterThan(330);
    expect(daysBetween(lastCut, dueOn)).toBeLessThan(400);
    expect(earliest <= dueOn && dueOn <= latest).toBe(true);
  });

  it('counts the unfinished interval: a venue that has stopped cutting is not forecast to cut as before', () => {
    // Eight pegs cut half a year apart, then none for four years: the ended intervals alone would say half a year.
    const stopped = Array.from({ length: 8 }, (_, index) => every(String(index), 180, 2, '2022-01-01'));
    expect(daysBetween(TODAY, forecastOf('0', stopped).dueOn)).toBeGreaterThan(180);
  });

  it('is never before the present, and comes later the wider the bank still is', () => {
    const today = '2026-08-20';
    // Cut at any interval, but always once it has closed in by 2 m; measured when it has by 1.2 m.
    const others = [300, 700, 420, 900, 520, 380].map((days, index): BankHistory => {
      const second = addDays('2023-01-10', days);
      return {
        peg: `o${index}`,
        visits: [
          { day: '2023-01-10', cut: true, clearWidthMetres: 4.6 },
          { day: addDays('2023-01-10', Math.round(days * 0.6)), cut: false, clearWidthMetres: 3.4 },
          { day: second, cut: true, clearWidthMetres: 4.6 },
        ],
      };
    });
    const withWidth = (metres: number): readonly BankHistory[] => [
      ...others,
      {
        peg: 'x',
        visits: [
          { day: '2025-08-20', cut: true, clearWidthMetres: 4.6 },
          { day: '2026-08-10', cut: false, clearWidthMetres: metres },
        ],
      },
    ];
    const wide = forecastOf('x', withWidth(4.2), today);
    const narrow = forecastOf('x', withWidth(2.7), today);
    expect(wide.isMeasured).toBe(true);
    expect(narrow.dueOn >= today).toBe(true);
    expect(daysBetween(narrow.dueOn, wide.dueOn)).toBeGreaterThan(60);
  });

  it('says the peg is late only when it has gone longer than nine in ten would', () => {
    expect(forecastOf('a', steady).isLate).toBe(false);
    expect(forecastOf('a', [...steady.slice(1), every('a', 365, 2, '2022-04-01')]).isLate).toBe(true);
  });

  it('is due before the walk that cuts it: what came due in the nesting months was cut on the first walk after them', () => {
    const nesting = [3, 4, 5, 6, 7, 8] as const;
    // Cut every September, looked at in February and June: in June nobody cuts, so it says nothing of what was due.
    const yearly = Array.from({ length: 6 }, (_, index): BankHistory => {
      const looks = [2023, 2024, 2025].flatMap((year) => [
        { day: `${year}-02-22`, cut: false },
        { day: `${year}-06-14`, cut: false },
        { day: `${year}-09-20`, cut: true },
      ]);
      return { peg: String(index), visits: [{ day: '2022-09-20', cut: true }, ...looks] };
    });
    for (const { earliest, dueOn, latest } of forecastCuts(yearly, '2026-01-10', nesting)) {
      expect('2026-02-22' < earliest && earliest < dueOn && dueOn < latest).toBe(true);
      expect(dueOn < '2026-09-20').toBe(true);
    }
  });

  it('counts a look that found no need of a cut, in the months in which banks are cut and in no other', () => {
    const looked = (day: string): readonly BankHistory[] => [
      ...steady,
      {
        peg: 'x',
        visits: [
          { day: '2025-09-20', cut: true },
          { day, cut: false },
        ],
      },
      {
        peg: 'y',
        visits: [
          { day: '2025-09-20', cut: true },
          { day: '2025-10-20', cut: false },
        ],
      },
    ];
    const dueAfter = (day: string, nesting: readonly (6 | 7 | 8)[]) =>
      forecastCuts(looked(day), TODAY, nesting).find(({ peg }) => peg === 'x')!.earliest;
    expect(dueAfter('2026-08-30', []) > '2026-08-30').toBe(true);
    expect(dueAfter('2026-08-30', [6, 7, 8])).toBe(dueAfter('2025-09-21', [6, 7, 8]));
  });

  it('is alike for pegs cut on the same days, and another where one day of one differs', () => {
    const alike = [every('x', 365, 5), every('y', 365, 5)];
    const [last, ...before] = every('z', 365, 5).visits.toReversed();
    const other = { peg: 'z', visits: [...before, { day: addDays(last!.day, -150), cut: true }] };
    const forecast = (peg: string) => ({ ...forecastOf(peg, [...alike, other, ...steady]), peg: '' });
    expect(forecast('x')).toEqual(forecast('y'));
    expect(forecast('z').dueOn < forecast('x').dueOn).toBe(true);
  });

  it('takes the usual of the venue for a peg cut once, with a wider spread', () => {
    const own = [20, 40, 30, 55].flatMap((days, index) => [every(`p${index}`, days * 10, 4, '2022-09-01')]);
    const once = { peg: 'once', visits: [{ day: '2025-12-01', cut: true }] };
    const long = { ...every('own', 365, 5, '2021-12-01'), peg: 'own' };
    const histories = [...own, once, long];
    const width = (peg: string) => {
      const { earliest, latest } = forecastOf(peg, histories, '2026-01-10');
      return daysBetween(earliest, latest);
    };
    expect(forecastOf('once', histories, '2026-01-10').ownIntervals).toBe(0);
    expect(width('once')).toBeGreaterThan(width('own'));
  });

  it('is not guessed where no interval of the venue has ended', () => {
    expect(forecastCuts([every('a', 0, 1)], TODAY, [])).toEqual([]);
    expect(forecastCuts([], TODAY, [])).toEqual([]);
    expect(forecastCuts([{ peg: 'a', visits: [{ day: '2026-01-01', cut: false }] }], TODAY, [])).toEqual([]);
  });

  it('is the same whatever the order of pegs and visits, and what comes after the present does not count', () => {
    const anyHistory = fc
      .array(fc.tuple(fc.integer({ min: 30, max: 500 }), fc.integer({ min: 1, max: 4 })), {
        minLength: 1,
        maxLength: 5,
      })
      .map((sizes) => sizes.map(([days, times], index) => every(String(index), days, times)));
    fc.assert(
      fc.property(anyHistory, (histories) => {
        const plain = forecastCuts(histories, TODAY, []);
        const turned = histories.map(({ peg, visits }) => ({
          peg,
          visits: [...visits, { day: addDays(TODAY, 1), cut: true }].reverse(),
        }));
        expect(forecastCuts(turned, TODAY, [])).toEqual(plain);
        for (const { earliest, dueOn, latest } of plain) {
          expect(TODAY <= earliest && earliest <= dueOn && dueOn <= latest).toBe(true);
        }
      }),
      { numRuns: 20 },
    );
  });
});
