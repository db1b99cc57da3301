import { describe, expect, test } from 'vitest';
import type { Sounding } from '../../../src/domain/venue.ts';
import { datumSoundings } from '../../../src/ground/depth/datum-soundings.ts';
import { waterPlane } from '../../../src/ground/water-plane.ts';
import { examplePeg } from '../../domain/example-venue.ts';
import { pondMap, rectangle, spot } from '../example-pond.ts';

const water = waterPlane(pondMap({ islands: [{ id: 'isle', ring: rectangle(-10, -5, 10, 5) }] }));
const pegs = new Map([['1', examplePeg('1', { at: spot(0, -31), facingDegrees: 0 })]]);

function sounding(changes: Partial<Sounding>): Sounding {
  return { water: 'pit', depthMetres: 2, day: '2026-03-05', file: 'soundings/pit.csv', line: 2, ...changes };
}

function used(soundings: readonly Sounding[], levels = [{ metres: 0.5, day: '2026-03-01' }]) {
  return datumSoundings(soundings, water, pegs, levels);
}

describe('a depth at datum', () => {
  test('is the depth plumbed less the level noted, or else the gauge’s', () => {
    const found = used([sounding({ at: spot(20, 0), levelMetres: -0.2 }), sounding({ at: spot(30, 0) })]);
    expect(found.used.map(({ depthMetres }) => depthMetres)).toEqual([2.2, 1.5]);
    expect(found.uncorrected).toBe(0);
  });

  test('stands as plumbed where no level is known, and is counted as such', () => {
    const found = used([sounding({ at: spot(20, 0), day: '2026-06-01' }), sounding({ at: spot(30, 0) })]);
    expect(found.used.map(({ depthMetres }) => depthMetres)).toEqual([2, 1.5]);
    expect(found.uncorrected).toBe(1);
  });

  test('of a bed that is dry at datum is 0', () => {
    expect(used([sounding({ at: spot(20, 0), depthMetres: 0.3 })]).used[0]!.depthMetres).toBe(0);
  });
});

describe('the place of a sounding', () => {
  test('is found from a peg by distance and bearing, the peg’s facing where none is given', () => {
    const found = used([
      sounding({ fromPeg: { peg: '1', distanceMetres: 11 } }),
      sounding({ fromPeg: { peg: '1', distanceMetres: 20, bearingDegrees: 45 } }),
    ]);
    expect(found.used[0]!.x).toBeCloseTo(0, 3);
    expect(found.used[0]!.y).toBeCloseTo(-20, 3);
    expect(found.used[1]!.x).toBeCloseTo(20 * Math.SQRT1_2, 3);
  });

  test('outside the outline, on an island or from a peg not known leaves it out, counted by reason', () => {
    const found = used([
      sounding({ at: spot(60, 0) }),
      sounding({ at: spot(0, 0) }),
      sounding({ at: spot(0, 200) }),
      sounding({ fromPeg: { peg: '9', distanceMetres: 5 } }),
      sounding({ at: spot(20, 0) }),
    ]);
    expect(found.used).toHaveLength(1);
    expect(found.unused).toEqual([
      { why: 'outside', soundings: 2 },
      { why: 'on-island', soundings: 1 },
      { why: 'peg-unknown', soundings: 1 },
    ]);
  });

  test('a hand’s breadth outside the drawn line is over the edge of the platform, and counts', () => {
    expect(used([sounding({ at: spot(20, -30.2) })]).used).toHaveLength(1);
    expect(used([sounding({ at: spot(20, -30.5) })]).used).toHaveLength(0);
  });
});

describe('two soundings at one place', () => {
  test('of different days: the later stands and the earlier is counted', () => {
    const found = used([
      sounding({ at: spot(20, 0), depthMetres: 3, day: '2026-03-07' }),
      sounding({ at: spot(20, 0), depthMetres: 2, day: '2026-03-05' }),
    ]);
    expect(found.used.map(({ depthMetres }) => depthMetres)).toEqual([2.5]);
    expect(found.unused).toEqual([{ why: 'plumbed-again', soundings: 1 }]);
  });

  test('of which one alone has a level are as unsure as that one', () => {
    const at = spot(20, 0);
    const found = used([sounding({ at, day: '2026-06-01', levelMetres: 0.5 }), sounding({ at, day: '2026-06-01' })]);
    expect(found.used.map(({ depthMetres }) => depthMetres)).toEqual([1.75]);
    expect(found.uncorrected).toBe(1);
  });

  test('of one day: their mean stands', () => {
    const found = used([sounding({ at: spot(20, 0), depthMetres: 3 }), sounding({ at: spot(20, 0), depthMetres: 2 })]);
    expect(found.used.map(({ depthMetres }) => depthMetres)).toEqual([2]);
    expect(found.unused).toEqual([]);
  });
});

test('no soundings at all are none used and none left out', () => {
  expect(used([])).toEqual({ used: [], uncorrected: 0, unused: [] });
});
