import { expect, it } from 'vitest';
import { distanceMetres } from '../../src/ground/geodesy/geodesic-between.ts';
import { standOffZone, standOffZoneMetres } from '../../src/ground/stand-off-zone.ts';

const RULE = { metres: 30, conductorSpreadMetres: 2, mapErrorMetres: 3 };
const LINE = {
  id: 'line',
  name: '11 kV line',
  line: [
    { lat: 52.75, lng: -0.05 },
    { lat: 52.752, lng: -0.05 },
  ],
};

it('reaches as far from the centre line as an open peg must stay', () => {
  expect(standOffZoneMetres(LINE, RULE)).toBe(34);
  expect(standOffZoneMetres({ ...LINE, conductorSpreadMetres: 6 }, RULE)).toBe(36);
});

it('draws its edge at that distance over the ground', () => {
  const [polygon] = standOffZone(LINE, RULE);
  const east = Math.max(...(polygon?.[0] ?? []).map(({ lng }) => lng));
  expect(distanceMetres({ lat: 52.751, lng: -0.05 }, { lat: 52.751, lng: east })).toBeCloseTo(34, 1);
});

it('draws nothing for a line without positions', () => {
  expect(standOffZone({ ...LINE, line: [] }, RULE)).toEqual([]);
});
