import { describe, expect, it } from 'vitest';
import { seededChance } from './chance.ts';
import { drawCyclicWalk } from './log/cyclic-walk.ts';
import { pegSum, trueSpread } from './log/truth.ts';
import { simulateFromModel, USUAL_SIMULATION } from './simulate-from-model.ts';

const standardDeviation = (values: readonly number[]) => {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  return Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (values.length - 1));
};

describe('a venue drawn from the rating model', () => {
  it('is the same for the same seed and another for another', () => {
    const once = JSON.stringify(simulateFromModel({ seed: 5 }));
    expect(JSON.stringify(simulateFromModel({ seed: 5 }))).toBe(once);
    expect(JSON.stringify(simulateFromModel({ seed: 6 }))).not.toBe(once);
  });

  it('scatters weights about the truth with the stated residual', () => {
    const { venue, truth } = simulateFromModel({ events: 400, seed: 3 });
    const days = new Map(venue.events.map((event) => [event.id, event.day]));
    const pegs = new Map(venue.pegs.map((peg) => [`${peg.water}/${peg.peg}`, peg]));
    const residuals = venue.sessions.map((session) => {
      const peg = pegs.get(`${session.water}/${session.peg}`)!;
      const month = Number(days.get(session.event)!.slice(5, 7)) as 1;
      const expected =
        truth.mean + truth.events[session.event]! + truth.anglers[session.angler!]! + pegSum(truth, peg, month);
      return Math.log(session.weightGrams! / 1000) - expected;
    });
    expect(residuals.length).toBeGreaterThan(8000);
    expect(standardDeviation(residuals)).toBeCloseTo(USUAL_SIMULATION.sd.residual, 1);
    expect(Math.abs(residuals.reduce((sum, value) => sum + value, 0) / residuals.length)).toBeLessThan(0.02);
  });

  it('draws effects that spread as asked', () => {
    const { truth } = simulateFromModel({ pegs: 400, anglers: 400, events: 400, features: 12, seed: 11 });
    const spread = trueSpread(truth);
    const { sd } = USUAL_SIMULATION;
    for (const term of ['event', 'angler', 'peg', 'featureMonth', 'residual'] as const) {
      expect(spread[term] / sd[term], term).toBeGreaterThan(0.85);
      expect(spread[term] / sd[term], term).toBeLessThan(1.15);
    }
  });

  it('leaves out about the asked share as not weighed, mostly low bags', () => {
    const { venue } = simulateFromModel({ dnwShare: 0.1, events: 300, seed: 4 });
    const dnw = venue.sessions.filter((session) => session.status === 'dnw').length;
    expect(dnw / venue.sessions.length).toBeGreaterThan(0.085);
    expect(dnw / venue.sessions.length).toBeLessThan(0.115);
  });

  it('lists only the frame of a frame-only event, the rest as unlisted where the draw is known', () => {
    const { venue } = simulateFromModel({ frameOnlyShare: 1, seed: 4 });
    for (const event of venue.events) {
      const statuses = venue.sessions.filter((session) => session.event === event.id).map((session) => session.status);
      expect(statuses.filter((status) => status === 'weighed')).toHaveLength(event.framePlaces);
      expect(statuses.filter((status) => status === 'unlisted')).toHaveLength(event.fished! - event.framePlaces);
    }
    const unknown = simulateFromModel({ frameOnlyShare: 1, drawKnownShare: 0, seed: 4 }).venue;
    expect(unknown.sessions.every((session) => session.status === 'weighed')).toBe(true);
  });

  it('gives no angler two pegs and no peg two anglers in one event', () => {
    const { venue } = simulateFromModel({ seed: 9 });
    for (const event of venue.events) {
      const sessions = venue.sessions.filter((session) => session.event === event.id);
      expect(new Set(sessions.map((session) => session.peg)).size).toBe(sessions.length);
      expect(new Set(sessions.map((session) => session.angler)).size).toBe(sessions.length);
    }
  });
});

describe('a cyclic walk over twelve months', () => {
  it('sums to zero and has the variance of the walk’s pseudo-inverse, 143/144 of the square of its scale', () => {
    const chance = seededChance(8);
    const firsts: number[] = [];
    for (let i = 0; i < 4000; i++) {
      const walk = drawCyclicWalk(12, 0.25, chance);
      expect(Math.abs(walk.reduce((sum, value) => sum + value, 0))).toBeLessThan(1e-12);
      firsts.push(walk[0]!);
    }
    // The diagonal of the pseudo-inverse is (n² − 1) / (12 n), 143/144 for n = 12 (circulant eigenvalues; by arithmetic).
    expect(standardDeviation(firsts) / (0.25 * Math.sqrt(143 / 144))).toBeCloseTo(1, 1);
  });
});
