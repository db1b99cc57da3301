import { describe, expect, test } from 'vitest';
import { holdsWater, waterPlane } from '../../src/ground/water-plane.ts';
import { pondMap, rectangle } from './example-pond.ts';

const island = (west: number, south: number, east: number, north: number) => ({
  id: 'isle',
  ring: rectangle(west, south, east, north),
});

describe('a water laid out', () => {
  test('has its area, the islands taken off', () => {
    expect(waterPlane(pondMap()).areaSquareMetres).toBeCloseTo(6000, 2);
    expect(waterPlane(pondMap({ islands: [island(-10, -5, 10, 5)] })).areaSquareMetres).toBeCloseTo(5800, 2);
  });

  test('tells water from bank and from island', () => {
    const { isWater } = waterPlane(pondMap({ islands: [island(-10, -5, 10, 5)] }));
    expect([isWater({ x: 30, y: 0 }), isWater({ x: 0, y: 0 }), isWater({ x: 60, y: 0 })]).toEqual([true, false, false]);
  });

  test('takes an island drawn across the shore for a piece of the bank', () => {
    const touching = waterPlane(pondMap({ islands: [island(40, -10, 60, 10)] }));
    expect(touching.shore).toHaveLength(1);
    expect(touching.areaSquareMetres).toBeCloseTo(6000 - 200, 2);
    expect(touching.isWater({ x: 45, y: 0 })).toBe(false);
  });

  test('takes an island that shares a stretch of the shore for a piece of the bank', () => {
    const touching = waterPlane(pondMap({ islands: [island(40, -10, 50, 10)] }));
    expect(touching.areaSquareMetres).toBeCloseTo(6000 - 200, 1);
    expect(touching.isWater({ x: 45, y: 0 })).toBe(false);
    expect(touching.isWater({ x: 35, y: 0 })).toBe(true);
  });

  test('counts the ground of two islands that overlap once', () => {
    const islands = [island(-10, -5, 10, 5), { id: 'other', ring: rectangle(0, -5, 20, 5) }];
    expect(waterPlane(pondMap({ islands })).areaSquareMetres).toBeCloseTo(6000 - 300, 2);
  });

  test('is cut in two by an island from bank to bank, and both parts are water', () => {
    const dam = waterPlane(pondMap({ islands: [island(-5, -40, 5, 40)] }));
    expect(dam.areaSquareMetres).toBeCloseTo(6000 - 600, 2);
    expect([dam.isWater({ x: -30, y: 0 }), dam.isWater({ x: 0, y: 0 }), dam.isWater({ x: 30, y: 0 })]).toEqual([
      true,
      false,
      true,
    ]);
  });

  test('does not care which way its rings were drawn', () => {
    const there = pondMap({ islands: [island(-10, -5, 10, 5)] });
    const back = {
      ...there,
      outline: [...there.outline].reverse(),
      islands: [{ id: 'isle', ring: [...there.islands[0]!.ring].reverse() }],
    };
    const [a, b] = [waterPlane(there), waterPlane(back)];
    expect(b.areaSquareMetres).toBeCloseTo(a.areaSquareMetres, 6);
    for (const water of [a, b])
      expect(water.shore.map((ring) => holdsWater(ring, water.isWater))).toEqual([true, false]);
  });

  test('lies as well across the date line and at the pole', () => {
    const acrossLine = [
      [-17.7, 179.9995],
      [-17.7, -179.9995],
      [-17.699, -179.9995],
      [-17.699, 179.9995],
    ];
    const water = waterPlane({ outline: acrossLine.map(([lat, lng]) => ({ lat: lat!, lng: lng! })), islands: [] });
    expect(water.areaSquareMetres).toBeGreaterThan(11_000);
    expect(water.areaSquareMetres).toBeLessThan(12_500);
    const round = [0, 90, 180, -90].map((lng) => ({ lat: 89.999, lng }));
    // A square whose corners lie 111.7 m from the pole, except that the middle of its box is not the pole.
    expect(waterPlane({ outline: round, islands: [] }).areaSquareMetres).toBeCloseTo(2 * 111.694 ** 2, -1);
  });

  test('refuses an outline without a position by name', () => {
    expect(() => waterPlane({ outline: [], islands: [] })).toThrow('waterPlane: the outline has no position');
  });
});
