import { describe, expect, it } from 'vitest';
import { newOuting } from '../../../src/client/pace/outing.ts';
import { slipOf } from '../../../src/client/pace/slip-of.ts';

const WATER = { venue: 'Example Water', water: 'kiln-pool' };
const OUTING = { ...newOuting('23', null, 5), start: '2026-12-06T10:00:00.000Z' };

describe('a slip from what was noted', () => {
  it('takes the day of the all in, and leaves open what was not said', () => {
    const made = slipOf({ ...OUTING, method: ' pole ', lines: '3', waterDegreesC: '6,5' }, WATER);
    expect(made).toEqual({
      ok: true,
      slip: {
        id: OUTING.id,
        ...WATER,
        peg: '23',
        day: '2026-12-06',
        match: null,
        hours: 5,
        caught: [],
        spot: '',
        method: 'pole',
        bait: '',
        lines: 3,
        waterDegreesC: 6.5,
      },
    });
  });

  it('says by field what cannot be', () => {
    expect(slipOf({ ...OUTING, start: null, spot: 'x'.repeat(60), lines: 'two', waterDegreesC: '99' }, WATER)).toEqual({
      ok: false,
      faults: {
        start: expect.stringContaining('all in'),
        spot: 'At most 40 letters.',
        lines: 'A whole number of lines, 20 at most.',
        waterDegreesC: 'Degrees Celsius from -1 to 35.',
      },
    });
  });
});
