import { describe, expect, it } from 'vitest';
import { listedSafetyTexts } from '../../src/atlas/safety-advice.ts';
import { HAZARD_KINDS } from '../../src/domain/hazard-kinds.ts';
import { SHIPPED_THRESHOLDS } from '../../src/domain/shipped-thresholds.ts';
import { EXAMPLE_SETTINGS } from '../domain/example-venue.ts';

const emergency = { number: '999', powerNumber: '105', pollutionNumber: '0800 80 70 60' };
const texts = listedSafetyTexts({ ...EXAMPLE_SETTINGS, thresholds: SHIPPED_THRESHOLDS, emergency });
const all = texts.map(({ words }) => words).join('\n');
const rests = (part: string) => texts.find(({ words }) => words.includes(part))?.sourceId;

describe('what the safety texts say, held against what their sources say', () => {
  // Network operators, campaign of 2024 (read there): wood-pole lines may carry up to 132,000 V. GB's highest is 400,000 V.
  it('gives wood poles the published voltage, not the highest there is', () => {
    expect(all).toContain('Lines on wooden poles may carry up to 132,000 volts.');
    expect(all).not.toMatch(/wooden pole may carry the highest/);
  });

  // NIE Networks, FishSafe (read there): drop the rod, keep others away, call the operator.
  it('lets go of tackle on a line and never tries to free it', () => {
    expect(rests('let go of it')).toBe('fishsafe');
    expect(all).toMatch(/Never pull, never try to free it/);
  });

  // London Fire Brigade, Survival and rescue (read there): call 999, tell to float, throw; do not enter.
  it('keeps the fire brigade’s order: call, tell, throw, and does not go in', () => {
    const steps = texts.filter(({ place }) => place === 'first steps: Someone is in the water');
    expect(steps.slice(0, 3).map(({ words }) => words.split(' ')[0])).toEqual(['Call', 'Tell', 'Throw']);
    expect(steps[0]!.words).toContain('Do not go in.');
  });

  // RNLI release of April 2018 (read there): cold shock passes in 60 to 90 s. Ramblers (read there): 30 minutes.
  it('gives the shock its seconds and the thunder its minutes', () => {
    expect(all).toContain('The gasping passes in about 90 seconds.');
    expect(all).toContain('Wait 30 minutes after the last thunder');
  });

  // National Trust, Hatfield Forest (read there): gusts of 45 mph; 45 × 1609.344 m / 3600 s = 20.1 m/s.
  it('gives gusts in miles an hour first, as the forecast does', () => {
    expect(all).toContain('gusts of 45 mph (20 m/s)');
  });

  // USACE Tulsa 2013 (read there): no ice is safe ice. No thickness is ever shown.
  it('shows no thickness of ice', () => {
    expect(all).toContain('No thickness is safe.');
    expect(all).not.toMatch(/\d+ ?(?:cm|in|mm) (?:of )?(?:clear )?ice/i);
  });

  // Common practice, no source: nobody tests a platform with their weight.
  it('keeps people off a doubtful platform and off the ice, with company or without', () => {
    expect(HAZARD_KINDS.find(({ id }) => id === 'soft-platform')?.advice).toBe('Do not use it: ask for a redraw.');
    expect(all).not.toMatch(/test (?:it|boards)|put your weight|from a platform alone/i);
  });

  // Environment Agency (read there): not all blooms are toxic, assume they are; they move from day to day.
  it('treats all scum as poisonous', () => {
    expect(all).toContain('Treat all scum as poisonous: nobody can tell by eye.');
  });
});
