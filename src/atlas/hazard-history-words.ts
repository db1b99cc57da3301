import { formatDay } from '../domain/day.ts';
import type { HazardEvent } from '../domain/hazard-history.ts';

/** One line of a hazard's history: `worse 12 Nov 2026, 4 × 4, by Bailiff, round k7q2`. */
export function historyWords({ did, on, by, round, severity, likelihood, words }: HazardEvent): string {
  const deed = did === 'worsened' ? 'worse' : did;
  return [
    `${deed} ${formatDay(on)}`,
    ...(severity === undefined || likelihood === undefined ? [] : [`${severity} × ${likelihood}`]),
    ...(by === undefined ? [] : [`by ${by}`]),
    ...(round === undefined ? [] : [`round ${round}`]),
    ...(words === undefined ? [] : [words]),
  ].join(', ');
}
