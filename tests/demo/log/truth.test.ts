import { describe, expect, it } from 'vitest';
import { monthOf } from '../../../src/domain/day.ts';
import { pegKey } from '../../../src/domain/peg.ts';
import { featuresOn } from '../../../src/domain/stand.ts';
import { demoVenue } from '../demo-venue.ts';
import { FEATURE_YEARS } from './feature-year.ts';
import { pegSum, trueFeatureMonths, truePegMonths } from './truth.ts';

const { venue, truth } = demoVenue();

describe('the demo’s truth', () => {
  it('gives every feature a year whose months sum to zero', () => {
    for (const { months } of Object.values(FEATURE_YEARS)) {
      expect(months).toHaveLength(12);
      expect(months.reduce((sum, month) => sum + month, 0)).toBeCloseTo(0, 10);
    }
  });

  it('averages to par over the pegs of each water in each month', () => {
    const byWaterMonth = Map.groupBy(truePegMonths(truth, venue.pegs), (row) => `${row.water} ${row.month}`);
    for (const rows of byWaterMonth.values()) {
      expect(rows.reduce((sum, row) => sum + row.logWorth, 0)).toBeCloseTo(0, 10);
    }
  });

  it('puts corners and margins above par in summer and below it in late autumn and winter', () => {
    const rows = trueFeatureMonths(truth, venue.pegs);
    for (const feature of ['corner', 'margin']) {
      const of = (month: number) => rows.find((row) => row.feature === feature && row.month === month)!.logWorth;
      for (const month of [6, 7, 8]) expect(of(month)).toBeGreaterThan(0.1);
      for (const month of [11, 12, 1, 2]) expect(of(month)).toBeLessThan(-0.1);
    }
  });

  it('is what the log was drawn from: weighed bags scatter about it by the residual, but for those that went unweighed', () => {
    const pegs = new Map([...venue.pegs, ...venue.retired!].map((peg) => [pegKey(peg.water, peg.peg), peg]));
    const residuals = venue.sessions
      .filter((session) => session.status === 'weighed' && session.angler !== undefined && session.weightGrams! > 1000)
      .filter((session) => venue.events.find((event) => event.id === session.event)!.listing === 'full')
      .map((session) => {
        const peg = pegs.get(pegKey(session.water, session.peg))!;
        const day = session.event.slice(0, 10);
        const sum = pegSum(truth, { ...peg, features: featuresOn(peg, day) }, monthOf(day));
        const expected = truth.mean + truth.events[session.event]! + truth.anglers[session.angler!]! + sum;
        return Math.log(session.weightGrams! / 1000) - expected;
      });
    const mean = residuals.reduce((sum, value) => sum + value, 0) / residuals.length;
    const sd = Math.sqrt(residuals.reduce((sum, value) => sum + (value - mean) ** 2, 0) / residuals.length);
    // Low bags are missing (not weighed, under a kilogram): the mean lies a little high, the scatter a little low.
    expect(mean).toBeGreaterThan(0);
    expect(mean).toBeLessThan(0.12);
    expect(sd).toBeGreaterThan(0.5);
    expect(sd).toBeLessThan(0.62);
  });
});
