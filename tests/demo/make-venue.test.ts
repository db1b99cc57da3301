import { describe, expect, it } from 'vitest';
import { pegKey } from '../../src/domain/peg.ts';
import { overheadLinesOf, standOffsOfPeg } from '../../src/ground/stand-off.ts';
import { makeVenue } from './make-venue.ts';
import { venueFiles } from './writing/venue-files.ts';

const SMALL = { seed: 7, waters: 2, pegs: 40, anglers: 60, events: 30, soundings: 300 } as const;

describe('a venue of any size', () => {
  it('is the same, byte for byte, for the same options, and another for another seed', () => {
    const once = JSON.stringify(makeVenue(SMALL));
    expect(JSON.stringify(makeVenue(SMALL))).toBe(once);
    expect(JSON.stringify(makeVenue({ ...SMALL, seed: 8 }))).not.toBe(once);
  });

  it('has the pegs, waters and events asked for, and about the sessions and soundings', () => {
    const { venue, truth } = makeVenue({
      seed: 2,
      waters: 5,
      pegs: 200,
      anglers: 500,
      events: 400,
      sessions: 10_000,
      soundings: 2000,
      firstDay: '2021-01-01',
    });
    expect(venue.waters).toHaveLength(5);
    expect(venue.pegs).toHaveLength(200);
    expect(venue.events).toHaveLength(400);
    expect(Object.keys(truth.anglers)).toHaveLength(500);
    expect(Math.abs(venue.sessions.length / 10_000 - 1)).toBeLessThan(0.08);
    expect(Math.abs(venue.soundings.length / 2000 - 1)).toBeLessThan(0.25);
  });

  it('holds only sessions of its own events, on pegs of the event’s water', () => {
    const { venue } = makeVenue(SMALL);
    const waters = new Map(venue.events.map((event) => [event.id, event.water]));
    const pegs = new Set(venue.pegs.map((peg) => pegKey(peg.water, peg.peg)));
    for (const session of venue.sessions) {
      expect(waters.get(session.event)).toBe(session.water);
      expect(pegs).toContain(pegKey(session.water, session.peg));
    }
  });

  it('closes pegs at its overhead line and leaves no open one inside the stand-off', () => {
    const { venue } = makeVenue(SMALL);
    const lines = overheadLinesOf(venue.waters);
    expect(venue.pegs.some((peg) => peg.status === 'closed')).toBe(true);
    for (const peg of venue.pegs.filter((candidate) => candidate.status === 'open')) {
      const verdicts = standOffsOfPeg(peg, lines, venue.settings).map((standOff) => standOff.verdict);
      expect(verdicts, pegKey(peg.water, peg.peg)).not.toContain('inside');
    }
  });

  it('asks for more days where the events do not fit', () => {
    expect(() => makeVenue({ ...SMALL, events: 50, firstDay: '2026-11-01', lastDay: '2026-11-10' })).toThrow(
      '50 events do not fit into 10 days on 2 waters',
    );
  });

  it('writes a file for every record', () => {
    const { venue } = makeVenue(SMALL);
    const files = venueFiles(venue);
    for (const peg of venue.pegs) expect(files.has(peg.file)).toBe(true);
    for (const year of [2024, 2025, 2026]) expect(files.has(`sessions/${year}/sessions.csv`)).toBe(true);
  });
});
