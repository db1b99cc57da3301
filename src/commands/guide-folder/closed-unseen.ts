import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { NOW_PATH } from '../../client/offline/offline-list.ts';
import { readNowFile } from '../../client/offline/read-now-file.ts';
import type { Day } from '../../domain/day.ts';
import { closedPegs, type NowFile } from '../../domain/now-file.ts';

/** Pegs that a new guide closes though it states the same day as the guide built before it, which does not. */
export interface ClosedUnseen {
  readonly day: Day;
  readonly pegs: readonly string[];
}

/** Null where the new guide states a later day, closes nothing that the one before left open, or stands alone. */
export function closedUnseen(before: NowFile | null, after: NowFile | null): ClosedUnseen | null {
  if (before === null || after === null || before.day < after.day) return null;
  const closed = new Set(closedPegs([before], after.day));
  const pegs = closedPegs([after], after.day).filter((peg) => !closed.has(peg));
  return pegs.length === 0 ? null : { day: after.day, pegs };
}

/** What a built guide says of its pegs; null where there is no guide, or none that can be read. */
export async function nowOfGuide(folder: string): Promise<NowFile | null> {
  try {
    return await readNowFile(readFileSync(join(folder, NOW_PATH)));
  } catch {
    return null;
  }
}

/** What the club should know before it publishes. */
export function closedUnseenWords({ day, pegs }: ClosedUnseen): string {
  const which = pegs.length > 5 ? `${pegs.slice(0, 5).join(', ')} and ${pegs.length - 5} more` : pegs.join(', ');
  return `warning: this guide closes ${which}, which the guide built before it leaves open under the same or a later day (${day}). Phones keep the closing and tell the two apart by their editions; a printed copy cannot. Move guide-day in venue.md on and build again.`;
}
