import { spawnSync } from 'node:child_process';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

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

/** Rated from nothing, then as it was, then after its last match. */
export const LARGE_RUNS = ['cold', 'unchanged', 'after one match'] as const;

export interface LargeRun {
  readonly run: (typeof LARGE_RUNS)[number];
  readonly sessions: number;
  readonly 'clock seconds': number;
  readonly 'processor seconds': number;
  readonly 'peak memory, MB': number;
}

/** Rates the venue in all ways, with one folder of kept ratings, each in a process of its own: as a club does, and with its own peak of memory. */
export async function rateLargeVenue(): Promise<LargeRun[]> {
  const folder = await mkdtemp(join(tmpdir(), 'peg-atlas-large-'));
  try {
    return LARGE_RUNS.map((run) => {
      const { stdout, status } = spawnSync(
        process.execPath,
        [join(import.meta.dirname, 'rate-large-venue.ts'), run, folder],
        { encoding: 'utf8', stdio: ['ignore', 'pipe', 'inherit'] },
      );
      if (status !== 0) throw new Error(`the run ${run} ended with ${status}`);
      return JSON.parse(stdout) as LargeRun;
    });
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}
