import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  AT_WATER_METRES,
  pegsThatMayBeNearest,
  ROUGHEST_METRES,
  whereWords,
} from '../../../src/client/where/where-words.ts';

const AT = { lat: 52.75, lng: -0.05 };
/** A metre of latitude there, in degrees. */
const METRE = 1 / 111_270;
const PEGS = [
  { peg: '3', at: { lat: AT.lat + 20 * METRE, lng: AT.lng } },
  { peg: '19', at: { lat: AT.lat - 120 * METRE, lng: AT.lng } },
];
const spot = (x: number, y: number) => ({
  lat: AT.lat + y * METRE,
  lng: AT.lng + (x * METRE) / Math.cos((AT.lat * Math.PI) / 180),
});
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

  it('names the throw line of the nearest peg and the walk to it, and none where the fix is too rough to know the bank', () => {
    const near = PEGS.map((peg) => ({ ...peg, throwLine: `K${peg.peg}, 40 m north (walk 52 m)` }));
    expect(whereWords({ at: AT, accuracyMetres: 6 }, near, METRES).said).toMatch(
      /to the north\. From peg 3 the nearest throw line: K3, 40 m north \(walk 52 m\)\.$/,
    );
    expect(whereWords({ at: AT, accuracyMetres: 90 }, near, METRES).said).not.toContain('throw line');
  });

  it('claims no peg where the fix leaves open which it is', () => {
    const row = [0, 10, 20, 30, 40, 50].map((x, i) => ({ peg: String(i + 1), at: spot(x, 8) }));
    const sure = whereWords({ at: spot(10, 0), accuracyMetres: 4 }, row, METRES);
    expect(sure.said).toContain('Nearest: peg 2, 8 m to the north.');
    const open = whereWords({ at: spot(12, 0), accuracyMetres: 6 }, row, METRES);
    expect(open.said).toContain('Nearest may be peg 2 or 3: the fix does not tell which. Read the number on the post.');
    expect(whereWords({ at: spot(25, 0), accuracyMetres: 40 }, row, METRES).said).toContain('one of 6 pegs');
    const shut = row.map((peg) => ({ ...peg, closed: peg.peg === '3' }));
    expect(whereWords({ at: spot(12, 0), accuracyMetres: 6 }, shut, METRES).said).toContain('peg 2 or 3 (closed):');
    const ofPool = row.map((peg) => ({ ...peg, of: ' of Kiln Pool' }));
    expect(whereWords({ at: spot(12, 0), accuracyMetres: 6 }, ofPool, METRES).said).toContain(
      'peg 2 or 3 of Kiln Pool:',
    );
    const two = [{ ...row[1]!, of: ' of Eelback' }, ...ofPool.slice(2)];
    expect(whereWords({ at: spot(12, 0), accuracyMetres: 6 }, two, METRES).said).toContain(
      'peg 2 of Eelback or 3 of Kiln Pool:',
    );
  });

  it('names the truly nearest peg among those it may be, wherever within its accuracy somebody stands', () => {
    const metres = fc.double({ min: -80, max: 80, noNaN: true });
    const places = fc.array(fc.tuple(metres, metres), { minLength: 1, maxLength: 8 });
    const share = fc.double({ min: 0, max: 1, noNaN: true });
    fc.assert(
      fc.property(places, fc.integer({ min: 1, max: 50 }), share, share, (pegs, accuracyMetres, turn, off) => {
        const placed = pegs.map(([x, y], i) => ({ peg: String(i), at: spot(x, y) }));
        const radius = off * accuracyMetres * 0.98;
        const [x, y] = [radius * Math.cos(turn * 2 * Math.PI), radius * Math.sin(turn * 2 * Math.PI)];
        const truly = pegs
          .map(([px, py], i) => ({ peg: String(i), metres: Math.hypot(px - x, py - y) }))
          .sort((a, b) => a.metres - b.metres)[0]!;
        const named = pegsThatMayBeNearest({ at: AT, accuracyMetres: accuracyMetres + 0.5 }, placed);
        const leastNamed = Math.min(
          ...named.map(({ peg }) => Math.hypot(pegs[Number(peg)]![0] - x, pegs[Number(peg)]![1] - y)),
        );
        // Two that stand together to a hand's breadth are one.
        expect(leastNamed).toBeLessThanOrEqual(truly.metres + 0.2);
      }),
    );
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
