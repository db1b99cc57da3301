import { describe, expect, it } from 'vitest';
import { roundSheet } from '../../src/atlas/round-sheet.ts';
import { roundOfWater } from '../../src/atlas/walking-order.ts';
import type { Water } from '../../src/domain/map.ts';
import type { Peg } from '../../src/domain/peg.ts';
import type { BankRound } from '../../src/domain/round.ts';
import { examplePeg, exampleVenue } from '../domain/example-venue.ts';
import { exampleAtlas } from './example-atlas.ts';

const at = (metresEast: number) => ({ lat: 52.75, lng: -0.05 + metresEast / 67_500 });
const carPark = { id: 'car', kind: 'car-park' as const, name: 'Mill car park', at: at(-10) };
const throwLine = { id: 'line', kind: 'throw-line' as const, name: 'by the gate', at: at(0), checkedOn: '2026-11-14' };

function atlasOf(pegs: readonly Peg[], ofWater: Partial<Water> = {}, rounds: readonly BankRound[] = []) {
  const [water] = exampleVenue().waters;
  const map = { ...water!.map, places: [carPark, throwLine] };
  return exampleAtlas({ venue: { pegs, waters: [{ ...water!, map, ...ofWater }], rounds } });
}

describe('the sheet to fill by hand', () => {
  const pegs = [
    examplePeg('1', { at: at(60), status: 'closed' }),
    examplePeg('2', {
      at: at(0),
      clearance: { clearWidthMetres: 4 },
      platform: { kind: 'timber', condition: 'sound' },
    }),
    examplePeg('3', {
      at: at(30),
      hazards: [
        { kind: 'trip', place: 'the path', severity: 2, likelihood: 2, foundOn: '2026-09-01', checkedOn: '2026-11-12' },
        { kind: 'ticks', place: 'grass', severity: 2, likelihood: 2, foundOn: '2026-05-01', clearedOn: '2026-10-01' },
      ],
    }),
  ];
  const sheet = roundSheet(atlasOf(pegs), 'pit');

  it('follows the walking order of the bank round, from the same car park', () => {
    const order = roundOfWater(atlasOf(pegs), 'pit').stops.map(({ peg }) => peg);
    expect(sheet.rows.map(({ peg }) => peg)).toEqual(order);
    expect(sheet.from).toBe('From Mill car park');
    // Along a straight bank the shortest round goes out one way and back: the middle peg is between the others.
    expect(order[1]).toBe('3');
  });

  it('prints what is on record, with a box for each hazard in force and none for a cleared one', () => {
    const row = (peg: string) => sheet.rows.find((each) => each.peg === peg);
    expect(row('1')?.isClosed).toBe(true);
    expect(row('2')).toMatchObject({ platform: 'sound', lineDistance: null });
    expect(row('2')?.measured.slice(0, 3)).toEqual(['4.0 m', '', '']);
    expect(row('3')?.hazards).toEqual(['Trip hazard, the path (12 Nov)']);
  });

  it('says once when all hazards of a peg were looked at on one day, and each its own day otherwise', () => {
    const hazard = (place: string, checkedOn: string) => ({
      kind: 'trip',
      place,
      severity: 2 as const,
      likelihood: 2 as const,
      foundOn: '2024-09-01',
      checkedOn,
    });
    const hazardsOf = (...days: string[]) =>
      roundSheet(
        atlasOf([examplePeg('1', { hazards: days.map((day, index) => hazard(`place ${index}`, day)) })]),
        'pit',
      ).rows[0]?.hazards;
    expect(hazardsOf('2026-11-12', '2026-11-12')).toEqual(['Trip hazard, place 0', 'Trip hazard, place 1 (12 Nov)']);
    expect(hazardsOf('2026-11-12', '2025-11-12')).toEqual([
      'Trip hazard, place 0 (12 Nov)',
      'Trip hazard, place 1 (12 Nov 2025)',
    ]);
  });

  it('has a row for each place that is no peg, with the state of its kit and a box for each hazard found there', () => {
    expect(sheet.places.map(({ name, isKit }) => [name, isKit])).toEqual([
      ['The Pit: the water itself', false],
      ['Throw line, by the gate', true],
      ['Mill car park', false],
    ]);
    expect(sheet.places[1]?.facts).toBe('checked 14 Nov 2026');
    const chained = { kind: 'locked-gate', place: 'a chain', mappedAs: 'car', severity: 3, likelihood: 3 } as const;
    const scum = {
      kind: 'algae-scum',
      place: 'in the bay',
      severity: 5,
      likelihood: 4,
      clearedOn: '2026-11-20',
    } as const;
    const found = [chained, scum].map((hazard) => ({ ...hazard, foundOn: '2026-11-12' }));
    const round = {
      ref: 'k7q2',
      day: '2026-11-16',
      file: '',
      entries: [{ entry: 'kit-checked', water: 'pit', mappedAs: 'line', kit: 'missing' }] as const,
    };
    const { places } = roundSheet(atlasOf(pegs, { hazards: found }, [round]), 'pit');
    expect(places.map(({ facts }) => facts)).toEqual(['', 'missing, checked 16 Nov 2026', '']);
    expect(places.map(({ hazards }) => hazards)).toEqual([[], [], ['Gate locked, a chain (found 12 Nov 2026)']]);
  });
  it('asks for a tape where a line is near', () => {
    const standOff = {
      line: '11kv',
      name: '11 kV line',
      mappedMetres: 44,
      bearingDegrees: 90,
      platformMetres: 40,
      sweptMetres: 32,
      verdict: 'near' as const,
    };
    const measured = { distanceMetres: 43.7, measuredOn: '2026-11-12', method: 'tape' };
    const near = exampleAtlas({
      venue: {
        pegs: [
          examplePeg('1'),
          examplePeg('2', { measuredLineDistance: measured }),
          examplePeg('3', { status: 'closed' }),
        ],
      },
      peg: { standOffs: [standOff] },
    });
    const byPeg = new Map(roundSheet(near, 'pit').rows.map((row) => [row.peg, row.lineDistance]));
    expect(byPeg.get('1')).toBe('not measured');
    expect(byPeg.get('2')).toBe('was 43 m');
    expect(byPeg.get('3')).toBeNull();
  });
});
