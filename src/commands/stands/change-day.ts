import { addDays, type Day, isDay } from '../../domain/day.ts';
import { UsageError } from '../read-arguments.ts';

/**
 * The day a change of the bank holds from. A record tells what is so, not what is planned: a day that has begun nowhere on
 * earth is refused.
 * @throws UsageError where it is no day, or lies ahead
 */
export function changeDay(written: string | undefined, now: Date = new Date()): Day {
  if (written === undefined) throw new UsageError('Say from which day: --from 2026-03-01');
  if (!isDay(written)) throw new UsageError(`Unexpected day "${written}", expected one such as 2026-03-01.`);
  const today = now.toISOString().slice(0, 10);
  // Where the day begins first (UTC+14) it is a day later from ten o'clock on.
  if (written > (now.getUTCHours() >= 10 ? addDays(today, 1) : today)) {
    throw new UsageError(
      `Unexpected day ${written}, expected one that has come: write the change on the day it is made.`,
    );
  }
  return written;
}
