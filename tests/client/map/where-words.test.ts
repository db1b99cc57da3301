import { describe, expect, it } from 'vitest';
import { AT_WATER_METRES, ROUGHEST_METRES, whereWords } from '../../../src/client/map/where-words.ts';

const AT = { lat: 52.75, lng: -0.05 };
/** A metre of latitude there, in degrees. */
const METRE = 1 / 111_270;
const PEGS = [
  { peg: '3', at: { lat: AT.lat + 20 * METRE, lng: AT.lng } },
  { peg: '19', at: { lat: AT.lat - 120 * METRE, lng: AT.lng } },
];
const METRES = { length: 'm' } as const;

describe('whereWords', () => {
  it('gives the position to read out first, then the nearest peg and the way to it', () => {
    expect(whereWords({ at: AT, accuracyMetres: 6 }, PEGS, METRES)).toEqual({
      said: expect.stringMatching(
        /^You are at TF \d{4} \d{4}, 52\.75000 N, 0\.05000 W, give or take 6 m\. Nearest: peg 3, 20 m to the north\.$/,
      ),
      isShown: true,
    });
  });

  it('tells the way to the peg that was asked for as well, once', () => {
    expect(whereWords({ at: AT, accuracyMetres: 6 }, PEGS, METRES, '19').said).toMatch(
      /peg 3, 20 m to the north\. Peg 19, 120 m to the south\.$/,
    );
    expect(whereWords({ at: AT, accuracyMetres: 6 }, PEGS, METRES, '3').said).toMatch(/peg 3, 20 m to the north\.$/);
  });

  it('tells a rough fix but does not show it, and still gives the position', () => {
    const rough = whereWords({ at: AT, accuracyMetres: ROUGHEST_METRES + 1 }, PEGS, METRES);
    expect(rough.isShown).toBe(false);
    expect(rough.said).toMatch(/^You are at TF .*Too rough to show/);
    expect(whereWords({ at: AT, accuracyMetres: ROUGHEST_METRES }, PEGS, METRES).isShown).toBe(true);
  });

  it('says of a fix away from the water that it is not on the map', () => {
    const away = { lat: AT.lat + (AT_WATER_METRES + 200) * METRE, lng: AT.lng };
    const where = whereWords({ at: away, accuracyMetres: 10 }, PEGS, METRES);
    expect(where.isShown).toBe(false);
    expect(where.said).toContain('not on this map');
  });

  it('leaves the grid reference out where there is no grid, and speaks of feet where the venue does', () => {
    const abroad = { at: { lat: 48, lng: 11 }, accuracyMetres: 10 };
    expect(whereWords(abroad, [], { length: 'ft' })).toEqual({
      said: expect.stringMatching(/^You are at 48\.00000 N, 11\.00000 E, give or take \d+ (ft|yd)\.$/),
      isShown: true,
    });
  });
});
