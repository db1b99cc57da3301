import { MONTH_LETTERS } from './month-letters.ts';
import type { AxisWorth } from './worth-axis.ts';
import { type WorthBar, worthBars } from './worth-bars.ts';

/**
 * A year of worth as twelve bars about par, January first; null for a month without one. Each month's group carries
 * `data-month`, and the present one the class `now`, so that a script can move it to the month of reading.
 */
export function yearBars(months: readonly (AxisWorth | null)[], nowMonth: number, label: string): string {
  const bars = [...MONTH_LETTERS].map((letter, index): WorthBar => {
    const month = index + 1;
    return {
      letter,
      shown: months[index] ?? null,
      mark: `data-month="${month}"`,
      now: month === nowMonth,
    };
  });
  return worthBars(bars, label, 'year-bars');
}
