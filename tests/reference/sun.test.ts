import { describe, expect, test } from 'vitest';
import { halfTurnDegrees } from '../../src/ground/geodesy/ellipsoid.ts';
import { sunDay, sunPosition } from '../../src/ground/sun-at-peg.ts';
import published from './data/sun.json' with { type: 'json' };

/**
 * Sources: I. Reda and A. Andreas, "Solar Position Algorithm for Solar Radiation Applications", NREL/TP-560-34302, 2003
 * (revised 2008), appendix A.5 and table A4; the British rows computed by PyEphem 4.1.4 and checked by Astropy 5.2.1.
 */
const { nrel_example, nrel_rise_set, uk_days, uk_positions } = published.data_and_expected;

/** Refraction added to an airless altitude (J. Meeus, Astronomical Algorithms, 2nd ed. 1998, formula 16.4; from memory), degrees. */
function seenAltitude(airlessDegrees: number): number {
  const h = Math.max(0, airlessDegrees);
  return airlessDegrees + 1.02 / 60 / Math.tan(((h + 10.3 / (h + 5.11)) * Math.PI) / 180);
}

function minutesOf(time: string): number {
  return Number(time.slice(0, 2)) * 60 + Number(time.slice(3, 5));
}

test('the worked example is met within 0.01° in bearing and in altitude without air', () => {
  const { bearingDegrees, altitudeDegrees } = sunPosition(Date.parse(nrel_example.utc), {
    lat: nrel_example.lat,
    lng: nrel_example.lon,
  });
  expect(Math.abs(bearingDegrees - nrel_example.published.azimuth)).toBeLessThan(0.01);
  const airless = nrel_example.published.elevation_without_refraction;
  expect(Math.abs(altitudeDegrees - seenAltitude(airless))).toBeLessThan(0.01);
});

describe('positions in Britain through 2025', () => {
  test.each(uk_positions)('$place at $utc is met within 0.01°', (row) => {
    const found = sunPosition(Date.parse(row.utc), { lat: row.lat, lng: row.lon });
    // Bearings crowd together towards the zenith: what counts is the arc between the two places of the sun.
    const arc =
      Math.abs(halfTurnDegrees(found.bearingDegrees - row.azimuth)) * Math.cos((row.altitude_airless * Math.PI) / 180);
    expect(arc).toBeLessThan(0.01);
    expect(Math.abs(found.altitudeDegrees - seenAltitude(row.altitude_airless))).toBeLessThan(0.01);
  });
});

describe('sunrise and sunset', () => {
  test.each(uk_days)('$place on $date are met within a minute on the clock of Britain', (row) => {
    const { sunrise, sunset } = sunDay(row.date, { lat: row.lat, lng: row.lon }, 'Europe/London');
    expect(Math.abs(minutesOf(sunrise!) - minutesOf(row.sunrise_local))).toBeLessThanOrEqual(1);
    expect(Math.abs(minutesOf(sunset!) - minutesOf(row.sunset_local))).toBeLessThanOrEqual(1);
  });

  test.each(nrel_rise_set)('the published times at $lat° on $date are met within a minute', (row) => {
    const { sunrise, sunset } = sunDay(row.date, { lat: row.lat, lng: row.lon }, 'UTC');
    expect(
      Math.abs(
        minutesOf(sunrise!) - minutesOf(row.published_sunrise_utc) - Number(row.published_sunrise_utc.slice(6)) / 60,
      ),
    ).toBeLessThanOrEqual(1);
    expect(
      Math.abs(
        minutesOf(sunset!) - minutesOf(row.published_sunset_utc) - Number(row.published_sunset_utc.slice(6)) / 60,
      ),
    ).toBeLessThanOrEqual(1);
  });

  test('no row of the table was left out', () => {
    expect([uk_days.length, new Set(uk_days.map(({ place }) => place)).size]).toEqual([72, 6]);
    expect(uk_positions).toHaveLength(36);
  });
});
