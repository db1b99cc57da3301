import { describe, expect, test } from 'vitest';
import { firstLook } from '../../src/ratings/first-look.ts';
import { type SimulationOptions, simulateFromModel } from '../demo/simulate-from-model.ts';

const SIZE: Partial<SimulationOptions> = { seed: 4, waters: 2, pegs: 30, anglers: 60, events: 90, features: 3 };

describe('firstLook', () => {
  test('takes a week of ice for what it is, not for a year in which the water fished badly', () => {
    const { venue } = simulateFromModel(SIZE);
    const iced = new Set(
      venue.events
        .filter(({ water, day }) => water === 'water-1' && day > '2025-01-01' && day < '2025-03-10')
        .map(({ id }) => id),
    );
    expect(iced.size).toBeGreaterThan(1);
    const sessions = venue.sessions.map((session) =>
      iced.has(session.event) ? { ...session, weightGrams: session.weightGrams! / 150 } : session,
    );
    expect(firstLook({ ...venue, sessions }).asked.waterYears).toBe(false);
  });

  test('still asks for years where a water fishes otherwise all year long', () => {
    const { venue } = simulateFromModel({ ...SIZE, waterYear: 0.6 });
    expect(firstLook(venue).asked.waterYears).toBe(true);
  });
});
