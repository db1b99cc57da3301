import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { loadVenue } from '../../src/content/load-venue.ts';
import { normalRing } from '../../src/domain/ring.ts';
import type { Venue } from '../../src/domain/venue.ts';
import { demoFiles } from './demo-files.ts';
import { demoVenue } from './demo-venue.ts';
import { writeFiles, writeVenue } from './write-venue.ts';

const folder = mkdtempSync(join(tmpdir(), 'peg-atlas-'));
afterAll(() => rmSync(folder, { recursive: true }));

/**
 * A venue as text, its figures to nine digits: pounds and ounces are not exact in grams. Shipped thresholds left out. Rings are
 * turned as the reader turns them, whichever way they were drawn.
 */
function asText(venue: Venue): unknown {
  const text = JSON.stringify({ ...venue, settings: { ...venue.settings, thresholds: [] } }, (key, value) =>
    typeof value === 'number'
      ? Number(value.toPrecision(9))
      : key === 'ring' || key === 'outline'
        ? normalRing(value)
        : value,
  );
  return JSON.parse(text);
}

describe('a written venue', () => {
  it('is read back without a fault, and as it was made: the demo', async () => {
    const to = join(folder, 'demo');
    writeFiles(demoFiles(), to);
    const read = await loadVenue(to);
    expect(read.faults).toEqual([]);
    expect(read.leftOut).toEqual([]);
    // A match is planned from the folder as it was written: its file stands beside what was made.
    const { matches, ...written } = read.venue!;
    expect(matches?.map(({ id }) => id)).toEqual(['2026-12-06-winter-three']);
    const { matches: _, ...made } = demoVenue().venue;
    expect(asText(written as Venue)).toEqual(asText(made as Venue));
  });

  it('is read back without a fault, and as it was made: one of any size', async () => {
    const to = join(folder, 'any');
    const made = writeVenue({ seed: 3, waters: 4, pegs: 90, anglers: 80, events: 30, soundings: 400 }, to);
    const read = await loadVenue(to);
    // Nobody has walked these banks with a tape: that is asked for, and nothing else.
    expect(read.faults.filter(({ rule }) => rule !== 'stand-off-unmeasured')).toEqual([]);
    expect(read.leftOut).toEqual([]);
    expect(asText(read.venue!)).toEqual(asText(made.venue));
  });
});
