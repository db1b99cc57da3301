import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { GateLock, MapPlace } from '../../../src/domain/map.ts';
import type { NearbyPlace } from '../../../src/ground/survey.ts';
import { gatesOfPeg } from '../../../src/ground/walk/gates-of-peg.ts';

/** A gate some way east of the peg, which stands at 0. */
const gate = (name: string, metres: number, facts: Partial<MapPlace> = {}): MapPlace => ({
  id: name,
  kind: 'gate',
  name,
  at: { lat: 0, lng: metres },
  ...facts,
});
const nearest = (candidates: readonly MapPlace[]) => (): NearbyPlace | null =>
  candidates
    .map((place) => ({
      name: place.name,
      place,
      distanceMetres: place.at.lng,
      bearingDegrees: 90,
      walkMetres: null,
      at: place.at,
    }))
    .sort((a, b) => a.distanceMetres - b.distanceMetres)[0] ?? null;
const gatesFor = (...gates: readonly MapPlace[]) => {
  const { best, atNight, lockedNearer } = gatesOfPeg(gates, nearest)({ lat: 0, lng: 0 });
  return [best?.name, atNight?.name, lockedNearer?.name];
};
const car = { vehicles: true };

describe('the gate for an ambulance', () => {
  it('is not the nearest where that one is kept locked, and the locked one is named beside it', () => {
    expect(
      gatesFor(gate('chained', 20, { ...car, locked: 'always' }), gate('open', 90, { ...car, locked: 'no' })),
    ).toEqual(['open', undefined, 'chained']);
  });

  it('has another for the night where it is locked then', () => {
    const byDay = gate('day', 20, { ...car, locked: 'night' });
    expect(gatesFor(byDay, gate('open', 90, { ...car, locked: 'no' }))).toEqual(['day', 'open', undefined]);
    expect(gatesFor(byDay)).toEqual(['day', undefined, undefined]);
  });

  it('counts a gate of which nothing is known as one that may be locked', () => {
    expect(gatesFor(gate('unsaid', 20, car), gate('open', 90, { ...car, locked: 'no' }))).toEqual([
      'open',
      undefined,
      'unsaid',
    ]);
    expect(gatesFor(gate('unsaid', 20, car))).toEqual(['unsaid', undefined, undefined]);
  });

  it('follows what is said of ambulances before what is said of vehicles', () => {
    const low = gate('low bridge', 20, { ...car, ambulance: false, locked: 'no' });
    expect(gatesFor(low, gate('open', 90, { ambulance: true, locked: 'no' }))[0]).toBe('open');
    expect(gatesFor(low)).toEqual([undefined, undefined, undefined]);
  });

  it('is never one that is kept locked, closed to vehicles or unknown while one open by day is mapped', () => {
    const anyGate = fc.record(
      {
        metres: fc.integer({ min: 1, max: 900 }),
        locked: fc.constantFrom<GateLock>('no', 'night', 'always'),
        vehicles: fc.boolean(),
        ambulance: fc.boolean(),
      },
      { requiredKeys: ['metres'] },
    );
    fc.assert(
      fc.property(fc.array(anyGate, { maxLength: 6 }), (facts) => {
        const gates = facts.map(({ metres, ...said }, index) => gate(`g${index}`, metres, said));
        const { best, atNight, lockedNearer } = gatesOfPeg(gates, nearest)({ lat: 0, lng: 0 });
        const isOpen = ({ locked, ambulance, vehicles }: MapPlace, when: readonly GateLock[]) =>
          locked !== undefined && when.includes(locked) && (ambulance ?? vehicles) === true;
        const openByDay = gates.filter((each) => isOpen(each, ['no', 'night']));
        if (openByDay.length > 0) {
          expect(openByDay).toContain(best!.place);
          expect(best!.distanceMetres).toBe(Math.min(...openByDay.map(({ at }) => at.lng)));
        }
        if (atNight !== null) expect(atNight.place.locked).toBe('no');
        if (lockedNearer !== null) {
          expect(lockedNearer.distanceMetres).toBeLessThan(best!.distanceMetres);
          expect(lockedNearer.place.locked ?? 'always').toBe('always');
        }
        for (const named of [best, atNight, lockedNearer]) {
          expect(named?.place.ambulance ?? named?.place.vehicles).not.toBe(false);
        }
      }),
    );
  });
});
