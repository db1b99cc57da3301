import { describe, expect, it } from 'vitest';
import { newOuting } from '../../../src/client/pace/outing.ts';
import { slipOf } from '../../../src/client/pace/slip-of.ts';
import { inEnglish } from '../../../src/words/say.ts';

const LINES = [
  { id: 'margin', name: 'Margin', metres: 1.234, depth: 0.8, off: 0 },
  { id: 'pole-13', name: '13 m pole', metres: 13, depth: 2, off: 1 },
];
const WATER = {
  venue: 'Example Water',
  water: 'kiln-pool',
  pegs: { 23: { placeKey: 'kiln-pool/23', limits: [], lines: LINES, bags: {} } },
};
const NAMES = { venue: WATER.venue, water: WATER.water };
const OUTING = { ...newOuting('23', null, 5), start: '2026-12-06T10:00:00.000Z' };

describe('a slip from what was noted', () => {
  it('takes the day of the all in, and leaves open what was not said', () => {
    const made = slipOf({ ...OUTING, method: ' pole ', lines: '3', waterDegreesC: '6,5' }, WATER, [], inEnglish);
    expect(made).toEqual({
      ok: true,
      slip: {
        id: OUTING.id,
        ...NAMES,
        peg: '23',
        day: '2026-12-06',
        match: null,
        hours: 5,
        caught: [],
        fed: [],
        depths: [],
        spot: '',
        method: 'pole',
        bait: '',
        lines: 3,
        waterDegreesC: 6.5,
      },
    });
  });

  it('takes what was fed to the minute, and what was plumbed that day at lines of this peg', () => {
    const made = slipOf(
      { ...OUTING, fed: [{ minute: 4.8, what: 'hemp' }] },
      WATER,
      [
        { line: 'pole-13', metres: 2.0574, day: '2026-12-06' },
        { line: 'margin', metres: 0.75, day: '2026-12-06' },
        { line: 'margin', metres: 0.6, day: '2026-12-05' },
        { line: 'cast-40', metres: 3, day: '2026-12-06' },
      ],
      inEnglish,
    );
    expect(made).toMatchObject({
      ok: true,
      slip: {
        fed: [{ minute: 4, what: 'hemp' }],
        depths: [
          { lineMetres: 13, depthMetres: 2.06 },
          { lineMetres: 1.23, depthMetres: 0.75 },
        ],
      },
    });
  });

  it('says by field what cannot be', () => {
    expect(
      slipOf({ ...OUTING, start: null, spot: 'x'.repeat(60), lines: 'two', waterDegreesC: '99' }, WATER, [], inEnglish),
    ).toEqual({
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
