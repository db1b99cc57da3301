import { describe, expect, test } from 'vitest';
import { bagTables, fitBag, rateBag } from '../../src/ratings/bag-model.ts';
import { firstLook } from '../../src/ratings/first-look.ts';
import { dnwEffect, withoutDnw } from '../../src/ratings/without-dnw.ts';
import { simulateFromModel } from '../demo/simulate-from-model.ts';

function comparedWithout(dnwShare: number) {
  const { venue } = simulateFromModel({
    seed: 41,
    waters: 1,
    pegs: 20,
    anglers: 40,
    events: 60,
    features: 3,
    dnwShare,
  });
  const look = firstLook(venue);
  const total = fitBag(venue, 'total', { dnw: look.lesson.mechanism ?? undefined });
  const dnw = total.sessions.filter(({ isDnw }) => isDnw === true).length;
  return { total, without: withoutDnw(dnwEffect(venue, look), bagTables(rateBag(venue, total)), dnw) };
}

describe('withoutDnw', () => {
  test('counts the DNWs and says how far worth moves without them', () => {
    const { total, without } = comparedWithout(0.1);
    expect(without!.dnw).toBe(total.sessions.filter(({ session }) => session.status === 'dnw').length);
    expect(without!.largestChange).toBeGreaterThan(0.005);
    expect(without!.largestChange).toBeLessThan(0.5);
  });

  test('shows less scatter without them, for the low bags are gone', () => {
    const { total, without } = comparedWithout(0.1);
    expect(without!.residualSd.without).toBeLessThan(without!.residualSd.with);
    // The published fit averages over its variances: near the plain one, and not the same.
    expect(without!.residualSd.with).toBeCloseTo(total.fit.residualSd, 1);
  });

  test('compares fits that differ in the DNWs alone: where there are next to none, next to nothing moves', () => {
    const { total, without } = comparedWithout(0.002);
    const dnw = total.sessions.filter(({ session }) => session.status === 'dnw').length;
    expect(dnw).toBeGreaterThan(0);
    expect(dnw).toBeLessThan(5);
    expect(without!.largestChange).toBeLessThan(0.03);
  });

  test('has nothing to say where everyone weighed', () => {
    expect(comparedWithout(0).without).toBeNull();
  });
});
