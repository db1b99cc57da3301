import type { Day } from '../domain/day.ts';
import { chosenDay } from './chosen-day.ts';
import { localDay } from './local-day.ts';
import { phoneStore } from './phone-store.ts';

/**
 * The days a page is read for: today, and the day the reader chose where that is another. A phone whose clock stands before
 * the guide's day is wrong: the guide is read on its own day at the earliest. What is closed on either day is shown closed.
 */
export function readDays(): readonly [today: Day, ...chosen: Day[]] {
  const { guideDay = '', guideBase = '/' } = document.body.dataset;
  const today = [localDay(new Date()), guideDay].sort().at(-1)!;
  const chosen = chosenDay(location.search, phoneStore(), guideBase, today);
  return chosen === null ? [today] : [today, chosen];
}
