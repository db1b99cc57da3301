import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { loadRatings } from '../../src/atlas/ratings-cache.ts';
import type { RatedVenue } from '../../src/ratings/rated-venue.ts';
import { simulateFromModel } from '../demo/simulate-from-model.ts';

/** A venue of 600 pegs on four waters and ten years of matches: some 45,000 sessions. */
export const LARGE_VENUE = {
  seed: 600,
  waters: 4,
  pegs: 600,
  anglers: 700,
  events: 1500,
  field: 30,
  features: 10,
  dnwShare: 0.08,
  firstDay: '2016-11-22',
  lastDay: '2026-11-21',
} as const;

export interface LargeRun {
  readonly run: 'cold' | 'unchanged' | 'after one match';
  readonly sessions: number;
  readonly 'clock seconds': number;
  readonly 'processor seconds': number;
  readonly 'peak memory, MB': number;
}

/** Rates the venue from nothing, then as it was, then after its last match, in one folder of kept ratings. */
export async function rateLargeVenue(size: typeof LARGE_VENUE, tell: (line: string) => void): Promise<LargeRun[]> {
  const { venue } = simulateFromModel(size);
  const last = venue.events.at(-1)!;
  const before: RatedVenue = {
    ...venue,
    events: venue.events.slice(0, -1),
    sessions: venue.sessions.filter(({ event }) => event !== last.id),
  };
  const folder = await mkdtemp(join(tmpdir(), 'peg-atlas-large-'));
  const rows: LargeRun[] = [];
  try {
    for (const [run, of] of [
      ['cold', before],
      ['unchanged', before],
      ['after one match', venue],
    ] as const) {
      const clock = performance.now();
      const start = process.cpuUsage();
      await loadRatings(of, { folder, progress: (what) => tell(`${run}: ${what}`) });
      const { user, system } = process.cpuUsage(start);
      rows.push({
        run,
        sessions: of.sessions.length,
        'clock seconds': Math.round(performance.now() - clock) / 1000,
        'processor seconds': Math.round((user + system) / 1e4) / 100,
        'peak memory, MB': Math.round(process.resourceUsage().maxRSS / 1024),
      });
    }
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
  return rows;
}
