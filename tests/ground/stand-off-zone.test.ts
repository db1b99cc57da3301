import fc from 'fast-check';
import { expect, it } from 'vitest';
import { distanceMetres } from '../../src/ground/geodesy/geodesic-between.ts';
import { localPlane } from '../../src/ground/geodesy/local-plane.ts';
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

it('is drawn about any line, however sharply it folds back', () => {
  const step = fc.record({
    turn: fc.oneof(fc.double({ min: 176, max: 184, noNaN: true }), fc.double({ min: -150, max: 150, noNaN: true })),
    metres: fc.oneof(fc.double({ min: 0, max: 0.5, noNaN: true }), fc.double({ min: 1, max: 120, noNaN: true })),
  });
  const { toPosition } = localPlane({ lat: 52.75, lng: -0.05 });
  fc.assert(
    fc.property(fc.array(step, { minLength: 1, maxLength: 7 }), (steps) => {
      const corners = [{ x: 0, y: 0 }];
      let heading = 0;
      for (const { turn, metres } of steps) {
        heading += (turn * Math.PI) / 180;
        const from = corners.at(-1)!;
        corners.push({ x: from.x + metres * Math.sin(heading), y: from.y + metres * Math.cos(heading) });
      }
      const zone = standOffZone({ ...LINE, line: corners.map(toPosition) }, RULE);
      const isDot = steps.reduce((sum, { metres }) => sum + metres, 0) < 0.01;
      expect(isDot || zone.length > 0).toBe(true);
    }),
    { numRuns: 1500 },
  );
});
