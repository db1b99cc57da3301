import { describe, expect, test } from 'vitest';
import { halfTurnDegrees } from '../../src/ground/geodesy/ellipsoid.ts';
import { sunByMonth, sunDay, sunInFace, sunPosition, sunYear } from '../../src/ground/sun-at-peg.ts';

const HERE = { lat: 52.75, lng: -0.05 };

describe('the sun in the face', () => {
  const midwinter = sunDay('2026-12-15', HERE, 'Europe/London');

  test('blinds a peg facing south about noon in midwinter, and never one facing north', () => {
    const spells = sunInFace(180, midwinter);
    expect(spells).toHaveLength(1);
    expect(spells[0]![0] < '12:00' && spells[0]![1] > '12:00').toBe(true);
    expect(sunInFace(0, midwinter)).toEqual([]);
  });

  test('is within 30° of the float line and 25° of the horizon at both ends of a spell', () => {
    for (const facing of [60, 120, 200, 260]) {
      const june = sunDay('2026-06-15', HERE, 'Europe/London');
      for (const clock of sunInFace(facing, june).flat()) {
        const { bearingDegrees, altitudeDegrees } = sunPosition(Date.parse(`2026-06-15T${clock}:00+01:00`), HERE);
        expect(Math.abs(halfTurnDegrees(bearingDegrees - facing))).toBeLessThanOrEqual(30);
        expect(altitudeDegrees).toBeGreaterThanOrEqual(0);
        expect(altitudeDegrees).toBeLessThanOrEqual(25);
      }
    }
  });

  test('comes in two spells where the sun passes too high between them', () => {
    const october = sunDay('2026-10-15', HERE, 'Europe/London');
    expect(sunInFace(180, october)).toHaveLength(2);
  });
});

describe('a day', () => {
  test('without sunrise has no times and no spell', () => {
    const polarNight = sunDay('2026-12-15', { lat: 78, lng: 15 }, 'UTC');
    expect([polarNight.sunrise, polarNight.sunset, sunInFace(180, polarNight)]).toEqual([null, null, []]);
  });

  test('without sunset has the low sun of the night', () => {
    const midnightSun = sunDay('2026-06-15', { lat: 78, lng: 15 }, 'UTC');
    expect([midnightSun.sunrise, midnightSun.sunset]).toEqual([null, null]);
    expect(sunInFace(0, midnightSun).length).toBeGreaterThan(0);
  });

  test('on which the clocks go back is told on the clock of its hour', () => {
    expect(sunDay('2026-10-24', HERE, 'Europe/London').sunrise?.slice(0, 2)).toBe('07');
    expect(sunDay('2026-10-25', HERE, 'Europe/London').sunrise?.slice(0, 2)).toBe('06');
  });
});

test('the table of a year has the fifteenth of each month, with summer time from April to October', () => {
  const table = sunByMonth(180, sunYear(2026, HERE, 'Europe/London'));
  expect(table.map(({ month }) => month)).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12]);
  expect(table[2]!.sunset!.slice(0, 2)).toBe('18');
  expect(table[3]!.sunset!.slice(0, 2)).toBe('19');
});
