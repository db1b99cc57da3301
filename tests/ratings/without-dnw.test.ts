import { describe, expect, test } from 'vitest';
import { bagTables, fitBag, rateBag } from '../../src/ratings/bag-model.ts';
import { firstLook } from '../../src/ratings/first-look.ts';
import { withoutDnw } from '../../src/ratings/without-dnw.ts';
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
  return { total, without: withoutDnw(venue, look, bagTables(rateBag(venue, total))) };
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
    expect(without!.residualSd).toBeLessThan(total.fit.residualSd);
  });

  test('has nothing to say where everyone weighed', () => {
    expect(comparedWithout(0).without).toBeNull();
  });
});
