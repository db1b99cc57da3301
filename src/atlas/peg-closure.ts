import { type Day, formatDay } from '../domain/day.ts';
import type { Peg } from '../domain/peg.ts';

/** What stands where a closure has no reason on record: the readers of the folder ask for one. */
const NO_REASON = 'no reason is on record';

/** "Closed since 2 Feb 2026": where a peg is closed, on every page that names it. */
export function closedSinceWords(statusSince: Day | undefined): string {
  return statusSince === undefined ? 'Closed' : `Closed since ${formatDay(statusSince)}`;
}

/** "since 2 Feb 2026: the 11 kV line …", to stand behind the word closed. */
export function closedBecause({ statusSince, statusReason }: Pick<Peg, 'statusSince' | 'statusReason'>): string {
  const since = statusSince === undefined ? '' : `since ${formatDay(statusSince)}: `;
  return `${since}${statusReason ?? NO_REASON}`;
}

/** "Peg 14, closed (since 2 Feb 2026: …)": a peg's name for who cannot see its mark. */
export function pegLabel(peg: Pick<Peg, 'peg' | 'status' | 'statusSince' | 'statusReason'>): string {
  return peg.status === 'closed' ? `Peg ${peg.peg}, closed (${closedBecause(peg)})` : `Peg ${peg.peg}`;
}
