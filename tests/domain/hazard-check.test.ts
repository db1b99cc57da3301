import { describe, expect, it } from 'vitest';
import type { Hazard } from '../../src/domain/hazard.ts';
import { actBy, hazardCheck } from '../../src/domain/hazard-check.ts';
import { SHIPPED_RISK_BANDS } from '../../src/domain/shipped-settings.ts';

const steps: Hazard = { kind: 'trip', place: 'steps', severity: 3, likelihood: 4, foundOn: '2026-11-01' };
const inspection = { hazardDays: 28 };

describe('when a hazard is looked at again', () => {
  it('goes by the venue’s interval, and by a shorter one where its kind changes from day to day', () => {
    expect(hazardCheck(steps, inspection).dueOn).toBe('2026-11-29');
    // "May be present anywhere; check daily": the Environment Agency on blooms, as told in the facts, section 3.
    expect(hazardCheck({ ...steps, kind: 'algae-scum' }, inspection).dueOn).toBe('2026-11-02');
    expect(hazardCheck({ ...steps, kind: 'algae-scum' }, { hazardDays: 1 }).intervalDays).toBe(1);
  });

  it('takes a day on which it was found worse, or something was done, for a look', () => {
    expect(hazardCheck({ ...steps, checkedOn: '2026-11-03', worsenedOn: '2026-11-09' }, inspection).checkedOn).toBe(
      '2026-11-09',
    );
    expect(hazardCheck({ ...steps, controlledOn: '2026-11-10' }, inspection).checkedOn).toBe('2026-11-10');
  });
});

describe('when a hazard is to be dealt with', () => {
  it('counts from the day it was found, or found worse', () => {
    expect(actBy(steps, SHIPPED_RISK_BANDS)).toEqual({
      on: '2026-12-01',
      since: '2026-11-01',
      band: 'high',
      withinDays: 30,
    });
    expect(actBy({ ...steps, worsenedOn: '2026-11-10' }, SHIPPED_RISK_BANDS)?.on).toBe('2026-12-10');
  });

  it('goes by the score that now stands, and asks nothing of what is cleared or of a band without a time', () => {
    expect(actBy({ ...steps, likelihoodAfter: 1 }, SHIPPED_RISK_BANDS)).toBeNull();
    expect(actBy({ ...steps, clearedOn: '2026-11-05' }, SHIPPED_RISK_BANDS)).toBeNull();
  });
});
