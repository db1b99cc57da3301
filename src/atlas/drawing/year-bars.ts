import { MONTH_LETTERS } from './month-letters.ts';
import type { AxisReturn } from './return-axis.ts';
import { type ReturnBar, returnBars } from './return-bars.ts';

/**
 * A year of returns as twelve bars about par, January first; null for a month without one. Each month's group carries
 * `data-month`, and the present one the class `now`, so that a script can move it to the month of reading.
 */
export function yearBars(months: readonly (AxisReturn | null)[], nowMonth: number, label: string): string {
  const bars = [...MONTH_LETTERS].map((letter, index): ReturnBar => {
    const month = index + 1;
    return {
      letter,
      shown: months[index] ?? null,
      mark: `data-month="${month}"`,
      now: month === nowMonth,
    };
  });
  return returnBars(bars, label, 'year-bars');
}
