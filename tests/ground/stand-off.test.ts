import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { OverheadLine } from '../../src/domain/map.ts';
import type { Peg } from '../../src/domain/peg.ts';
import { destination } from '../../src/ground/geodesy/destination.ts';
import { keepOpenLimit } from '../../src/ground/keep-open-limit.ts';
import {
  countsMetres,
  hasLineAbout,
  needsMeasuredDistance,
  overheadLinesOf,
  standOffsOfPeg,
} from '../../src/ground/stand-off.ts';
import { effectiveReach } from '../../src/ground/swept-area.ts';
import { EXAMPLE_SETTINGS, examplePeg, exampleVenue } from '../domain/example-venue.ts';

/** Allowances of the example venue: half of 2 m of spread, and 3 m of map error. */
const ALLOWANCE = 4;
const HERE = examplePeg('1').at;

/** A straight line 400 m long whose nearest point lies so far from the peg, in that direction. */
function lineAt(metres: number, bearingDegrees: number, changes: Partial<OverheadLine> = {}): OverheadLine {
  const foot = destination(HERE, bearingDegrees, metres);
  return {
    id: '11kv',
    name: '11 kV line',
    line: [destination(foot, bearingDegrees + 90, 200), destination(foot, bearingDegrees - 90, 200)],
    ...changes,
  };
}

function onlyStandOff(peg: Peg, ...lines: OverheadLine[]) {
  return standOffsOfPeg(peg, lines, EXAMPLE_SETTINGS)[0]!;
}

describe('the distance from the platform', () => {
  test('runs to the mapped centre line less half the spread less the map error', () => {
    const found = onlyStandOff(examplePeg('1', { facingDegrees: 180 }), lineAt(70, 0));
    expect(found.mappedMetres).toBeCloseTo(70, 6);
    expect(found.platformMetres).toBeCloseTo(70 - ALLOWANCE, 6);
    expect(found.bearingDegrees % 360).toBeCloseTo(0, 6);
  });

  test('takes the spread of the line where the map gives one', () => {
    expect(onlyStandOff(examplePeg('1'), lineAt(70, 90, { conductorSpreadMetres: 8 })).platformMetres).toBeCloseTo(
      63,
      6,
    );
  });

  test('is not made greater by a line that hangs high or carries little', () => {
    const low = onlyStandOff(examplePeg('1'), lineAt(33, 90));
    const high = onlyStandOff(examplePeg('1'), lineAt(33, 90, { heightMetres: 40, voltageVolts: 230 }));
    expect(high.verdict).toBe('inside');
    expect(high.platformMetres).toBe(low.platformMetres);
  });
});

describe('the verdict', () => {
  const short: Partial<Peg> = { facingDegrees: 180, limits: { poleMetres: 0, castMetres: 0 } };
  test('is inside just below the stand-off and near from it to a fifth above', () => {
    expect(onlyStandOff(examplePeg('1', short), lineAt(33.99, 0)).verdict).toBe('inside');
    expect(onlyStandOff(examplePeg('1', short), lineAt(34.01, 0)).verdict).toBe('near');
    expect(onlyStandOff(examplePeg('1', short), lineAt(39.99, 0)).verdict).toBe('near');
    expect(onlyStandOff(examplePeg('1', short), lineAt(40.01, 0)).verdict).toBe('clear');
  });

  test('counts the cast ahead: a line 65 m off is inside for a 40 m cast and clear for a 20 m one', () => {
    expect(onlyStandOff(examplePeg('1'), lineAt(65, 0)).verdict).toBe('inside');
    expect(onlyStandOff(examplePeg('1', { limits: { castMetres: 20, poleMetres: 11 } }), lineAt(65, 0)).verdict).toBe(
      'clear',
    );
  });

  test('counts the pole shipped back: a line 48 m behind is inside for a 16 m pole', () => {
    const found = onlyStandOff(examplePeg('1'), lineAt(48, 180));
    expect(found.sweptMetres).toBeCloseTo(48 - 16 - ALLOWANCE, 5);
    expect(found.verdict).toBe('inside');
  });
});

describe('a measured distance', () => {
  const measured = (distanceMetres: number): Partial<Peg> => ({
    measuredLineDistance: { distanceMetres, measuredOn: '2026-11-12', method: 'tape' },
  });

  test('counts where it is smaller than the mapped one, and brings the swept area nearer by as much', () => {
    const mapped = onlyStandOff(examplePeg('1'), lineAt(100, 0));
    const found = onlyStandOff(examplePeg('1', measured(85)), lineAt(100, 0));
    expect(found.platformMetres).toBeCloseTo(85, 6);
    expect(found.sweptMetres).toBeCloseTo(mapped.sweptMetres - 11, 6);
  });

  test('changes nothing where it is the greater', () => {
    expect(onlyStandOff(examplePeg('1', measured(140)), lineAt(100, 0))).toEqual(
      onlyStandOff(examplePeg('1'), lineAt(100, 0)),
    );
  });

  test('is not laid on a line that cannot be the nearest, but on one that may be', () => {
    const peg = examplePeg('1', measured(60));
    const [nearest, asNear, far] = standOffsOfPeg(
      peg,
      [lineAt(300, 180, { id: 'far' }), lineAt(80, 0, { id: 'nearest' }), lineAt(84, 90, { id: 'as-near' })],
      EXAMPLE_SETTINGS,
    );
    expect([nearest!.platformMetres, asNear!.platformMetres, far!.platformMetres].map(Math.round)).toEqual([
      60, 60, 296,
    ]);
  });
});

describe('a measured distance beside lines of unlike spread', () => {
  test('is laid on each that may be the nearest once its own spread is taken off', () => {
    // Outer conductors at 80 − 20 − 3 = 57 m and 66 − 1 − 3 = 62 m: with 3 m of map error on either both may be the nearest.
    const [wide, slim] = standOffsOfPeg(
      examplePeg('1', { measuredLineDistance: { distanceMetres: 50, measuredOn: '2026-11-12', method: 'tape' } }),
      [lineAt(80, 0, { id: 'wide', conductorSpreadMetres: 40 }), lineAt(66, 90, { id: 'slim' })],
      EXAMPLE_SETTINGS,
    );
    expect([wide!.platformMetres, slim!.platformMetres].map(Math.round)).toEqual([50, 50]);
    // At 74 − 1 − 3 = 70 m the slim one cannot be: 57 + 2 × 3 is less.
    const others = standOffsOfPeg(
      examplePeg('1', { measuredLineDistance: { distanceMetres: 50, measuredOn: '2026-11-12', method: 'tape' } }),
      [lineAt(80, 0, { id: 'wide', conductorSpreadMetres: 40 }), lineAt(74, 90, { id: 'slim' })],
      EXAMPLE_SETTINGS,
    );
    expect(others.map(({ line, platformMetres }) => [line, Math.round(platformMetres)])).toEqual([
      ['wide', 50],
      ['slim', 70],
    ]);
  });
});

describe('what a line is called by', () => {
  test('goes with its distance where the map states it, and is left out where not', () => {
    expect(onlyStandOff(examplePeg('1'), lineAt(70, 0, { heightMetres: 7.5, voltageVolts: 11_000 }))).toMatchObject({
      line: '11kv',
      name: '11 kV line',
      heightMetres: 7.5,
      voltageVolts: 11_000,
    });
    const bare = onlyStandOff(examplePeg('1'), lineAt(70, 0));
    expect('heightMetres' in bare || 'voltageVolts' in bare).toBe(false);
  });
});

describe('what counts against the stand-off', () => {
  const standOff = (platformMetres: number, sweptMetres: number) => ({
    ...onlyStandOff(examplePeg('1'), lineAt(70, 0)),
    platformMetres,
    sweptMetres,
  });
  test('is the nearer of platform and swept area', () => {
    expect([countsMetres(standOff(50, 34)), countsMetres(standOff(34, 50))]).toEqual([34, 34]);
  });
});

describe('a tape is asked for', () => {
  const [near, clear] = [36, 90].map((metres) =>
    onlyStandOff(examplePeg('1', { facingDegrees: 180, limits: { poleMetres: 0, castMetres: 0 } }), lineAt(metres, 0)),
  );
  test('where an open peg is outside by little and nobody measured it', () => {
    const measured = { distanceMetres: 36, measuredOn: '2026-11-12', method: 'tape' } as const;
    expect(needsMeasuredDistance({ status: 'open' }, [clear!, near!])).toBe(true);
    expect(needsMeasuredDistance({ status: 'open' }, [clear!])).toBe(false);
    expect(needsMeasuredDistance({ status: 'closed' }, [near!])).toBe(false);
    expect(needsMeasuredDistance({ status: 'open', measuredLineDistance: measured }, [near!])).toBe(false);
  });
});

describe('a line is about a peg', () => {
  const rule = EXAMPLE_SETTINGS.standOff;
  const mapped = (metres: number) => [{ ...onlyStandOff(examplePeg('1'), lineAt(70, 0)), mappedMetres: metres }];
  const fact = (source: 'map' | 'record' | 'measured') => ({ name: 'wires', source, metres: 200 });
  test('within two stand-offs as mapped, and wherever a record or a tape tells of one', () => {
    expect(hasLineAbout({ standOffs: mapped(2 * rule.metres - 0.1), lines: [] }, rule)).toBe(true);
    expect(hasLineAbout({ standOffs: mapped(2 * rule.metres), lines: [fact('map')] }, rule)).toBe(false);
    expect(hasLineAbout({ standOffs: [], lines: [fact('map'), fact('record')] }, rule)).toBe(true);
    expect(hasLineAbout({ standOffs: [], lines: [fact('measured')] }, rule)).toBe(true);
    expect(hasLineAbout({ standOffs: [], lines: [] }, rule)).toBe(false);
  });
});

describe('the limit that would keep a peg open', () => {
  test('is empty where the peg is outside as it stands', () => {
    expect(keepOpenLimit(examplePeg('1'), [lineAt(200, 0)], EXAMPLE_SETTINGS)).toEqual({});
  });

  test('shortens the cast for a line ahead, to the metre', () => {
    // 70 m less 4 m of allowances less 30 m of stand-off leaves 36 m.
    expect(keepOpenLimit(examplePeg('1'), [lineAt(70.1, 0)], EXAMPLE_SETTINGS)).toEqual({ castMetres: 36 });
  });

  test('shortens the pole for a line behind, to the half metre', () => {
    expect(keepOpenLimit(examplePeg('1'), [lineAt(45.6, 180)], EXAMPLE_SETTINGS)).toEqual({ poleMetres: 11.5 });
  });

  test('narrows the sector where a line beside the peg leaves no pole worth fishing', () => {
    const limit = keepOpenLimit(examplePeg('1', { facingDegrees: 0 }), [lineAt(38, 90)], EXAMPLE_SETTINGS);
    expect(limit).toMatchObject({ poleMetres: 5 });
    expect(limit!.sectorDegrees).toBeLessThan(120);
  });

  test('is null where nothing worth fishing is left: no pole allowed, and not a metre of cast', () => {
    const noPole = examplePeg('1', { limits: { poleMetres: 0 } });
    expect(keepOpenLimit(noPole, [lineAt(34.6, 0)], EXAMPLE_SETTINGS)).toBeNull();
    expect(keepOpenLimit(noPole, [lineAt(70.1, 0)], EXAMPLE_SETTINGS)).toEqual({ castMetres: 36 });
  });

  test('is null where the platform itself is inside', () => {
    expect(keepOpenLimit(examplePeg('1'), [lineAt(33, 0)], EXAMPLE_SETTINGS)).toBeNull();
  });

  test('passes when it is written into the record, and the next longer cast does not', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 34.5, max: 90, noNaN: true }),
        fc.integer({ min: 0, max: 359 }),
        (metres, bearing) => {
          const line = lineAt(metres, bearing);
          const limits = keepOpenLimit(examplePeg('1'), [line], EXAMPLE_SETTINGS);
          if (limits === null) return;
          expect(onlyStandOff(examplePeg('1', { limits }), line).verdict).not.toBe('inside');
          if (limits.castMetres === undefined) return;
          const reach = effectiveReach({ limits }, EXAMPLE_SETTINGS.permittedReach);
          const longer = { ...limits, castMetres: Math.max(reach.poleMetres, limits.castMetres) + 1 };
          expect(onlyStandOff(examplePeg('1', { limits: longer }), line).verdict).toBe('inside');
        },
      ),
      { numRuns: 300 },
    );
  });
});

describe('the lines of a venue', () => {
  test('count for the pegs of every water, the nearest first', () => {
    const [pit] = exampleVenue().waters;
    const other = { ...pit!, id: 'other', map: { ...pit!.map, overheadLines: [lineAt(90, 0, { id: 'b' })] } };
    const mine = { ...pit!, map: { ...pit!.map, overheadLines: [lineAt(200, 0, { id: 'a' })] } };
    const found = standOffsOfPeg(examplePeg('1'), overheadLinesOf([mine, other]), EXAMPLE_SETTINGS);
    expect(found.map(({ line }) => line)).toEqual(['b', 'a']);
  });

  test('without a segment are no line', () => {
    expect(standOffsOfPeg(examplePeg('1'), [lineAt(50, 0, { line: [HERE] })], EXAMPLE_SETTINGS)).toEqual([]);
  });

  test('across the date line are as near as anywhere', () => {
    const peg = examplePeg('1', { at: { lat: -17.7, lng: 179.9999 }, facingDegrees: 180 });
    const foot = destination(peg.at, 90, 60);
    const line = { ...lineAt(0, 0), line: [destination(foot, 0, 100), destination(foot, 180, 100)] };
    expect(line.line[0]!.lng).toBeLessThan(0);
    expect(onlyStandOff(peg, line).mappedMetres).toBeCloseTo(60, 5);
  });
});
