import { describe, expect, it } from 'vitest';
import type { Hazard } from '../../src/domain/hazard.ts';
import { HAZARD_KINDS } from '../../src/domain/hazard-kinds.ts';
import { compareByUrgency, riskBand, riskOf } from '../../src/domain/risk.ts';
import type { RiskBand } from '../../src/domain/venue.ts';

const BANDS: readonly RiskBand[] = [
  { from: 1, name: 'low', meaning: '' },
  { from: 5, name: 'moderate', meaning: '' },
  { from: 10, name: 'high', meaning: '' },
  { from: 17, name: 'very high', meaning: '' },
];

const steepBank: Hazard = {
  kind: 'steep-bank',
  place: 'the whole bank',
  severity: 4,
  likelihood: 3,
  likelihoodAfter: 1,
  foundOn: '2026-01-01',
};
const powerLine: Hazard = {
  kind: 'overhead-line',
  place: 'above',
  severity: 1,
  likelihood: 1,
  foundOn: '2026-01-01',
};

describe('risk', () => {
  // ISO 31010:2019 B.10.3, consequence/likelihood matrix (edition from memory); the product of two scales of five is common practice.
  it('is severity times likelihood, before and after the control', () => {
    const risk = riskOf(steepBank, BANDS);
    expect(risk.before).toEqual({ severity: 4, likelihood: 3, score: 12, band: 'high' });
    expect(risk.after).toEqual({ severity: 4, likelihood: 1, score: 4, band: 'low' });
  });

  it('claims nothing after a control that has no figures', () => {
    expect(riskOf(powerLine, BANDS).after).toBeNull();
  });

  it('puts every score from 1 to 25 into exactly the band that starts at or below it', () => {
    const bands = Array.from({ length: 25 }, (_, index) => riskBand(index + 1, BANDS)?.name);
    expect(bands.slice(0, 4)).toEqual(['low', 'low', 'low', 'low']);
    expect(bands[8]).toBe('moderate');
    expect(bands[9]).toBe('high');
    expect(bands[16]).toBe('very high');
    expect(bands).not.toContain(undefined);
  });

  it('reads hazards by the score that stands now: after a control where there is one', () => {
    const fallen: Hazard = { kind: 'fallen-tree', place: 'left', severity: 3, likelihood: 2, foundOn: '2026-01-01' };
    const [controlled, six] = [riskOf(steepBank, BANDS), riskOf(fallen, BANDS)];
    expect(controlled.hardRule || six.hardRule).toBe(false);
    expect([controlled, six].sort(compareByUrgency)).toEqual([six, controlled]);
    expect([six, controlled].sort(compareByUrgency)).toEqual([six, controlled]);
  });

  it('keeps the figure that a control does not change', () => {
    const { likelihoodAfter: _, ...uncontrolled } = steepBank;
    expect(riskOf({ ...uncontrolled, severityAfter: 2 }, BANDS).after).toMatchObject({ severity: 2, likelihood: 3 });
  });

  it('never lets a low score hide a hard rule', () => {
    const order = [riskOf(steepBank, BANDS), riskOf(powerLine, BANDS)].sort(compareByUrgency);
    expect(order[0]?.hardRule).toBe(true);
  });

  it('knows power lines, algae scum, ice and unsafe platforms as hard rules', () => {
    expect(HAZARD_KINDS.filter((kind) => kind.hardRule).map((kind) => kind.id)).toEqual([
      'overhead-line',
      'algae-scum',
      'thin-ice',
      'unsafe-platform',
    ]);
  });
});
