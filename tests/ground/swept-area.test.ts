import fc from 'fast-check';
import { expect, test } from 'vitest';
import { footOnPolyline } from '../../src/ground/plane/polyline-distance.ts';
import { pointAlong } from '../../src/ground/plane/sector.ts';
import { effectiveReach, sweptSectors, sweptToLineMetres } from '../../src/ground/swept-area.ts';

const PLATFORM = { x: 0, y: 0 };
const coordinate = fc.double({ min: -120, max: 120, noNaN: true });
const point = fc.record({ x: coordinate, y: coordinate });
const line = fc.array(point, { minLength: 2, maxLength: 6 });
const bearing = fc.double({ min: 0, max: 360, noNaN: true });
const reach = fc.record({
  poleMetres: fc.double({ min: 0, max: 20, noNaN: true }),
  castMetres: fc.double({ min: 0, max: 60, noNaN: true }),
  sectorDegrees: fc.double({ min: 0, max: 360, noNaN: true }),
});

function swept(
  facingDegrees: number,
  permitted: { poleMetres: number; castMetres: number; sectorDegrees: number },
  drawn: readonly { x: number; y: number }[],
) {
  return sweptToLineMetres(sweptSectors(PLATFORM, facingDegrees, permitted), drawn);
}

test('a line straight ahead is its distance less the cast away, one behind its distance less the pole', () => {
  const permitted = { poleMetres: 16, castMetres: 40, sectorDegrees: 60 };
  expect(
    swept(0, permitted, [
      { x: -100, y: 100 },
      { x: 100, y: 100 },
    ]),
  ).toBeCloseTo(60, 12);
  expect(
    swept(0, permitted, [
      { x: -100, y: -100 },
      { x: 100, y: -100 },
    ]),
  ).toBeCloseTo(84, 12);
});

test('a line beside the peg is measured from the corner of the sector', () => {
  const permitted = { poleMetres: 16, castMetres: 40, sectorDegrees: 60 };
  // The sector ahead ends 30° off the facing: 40 m along it is 20 m to the side.
  expect(
    swept(0, permitted, [
      { x: 50, y: -200 },
      { x: 50, y: 200 },
    ]),
  ).toBeCloseTo(30, 12);
});

test('a line that enters and leaves the arc without an end inside is at no distance', () => {
  const permitted = { poleMetres: 10, castMetres: 40, sectorDegrees: 120 };
  expect(
    swept(90, permitted, [
      { x: 39, y: -50 },
      { x: 39, y: 50 },
    ]),
  ).toBe(0);
});

test('what is swept never lies nearer to a line than computed: random spots of it are all as far or farther', () => {
  fc.assert(
    fc.property(
      reach,
      bearing,
      line,
      fc.double({ min: -0.5, max: 0.5, noNaN: true }),
      fc.double({ min: 0, max: 1, noNaN: true }),
      fc.boolean(),
      (permitted, facing, drawn, turn, share, behind) => {
        const radius = behind ? permitted.poleMetres : Math.max(permitted.poleMetres, permitted.castMetres);
        const spot = pointAlong(PLATFORM, facing + (behind ? 180 : 0) + turn * permitted.sectorDegrees, share * radius);
        const distance = footOnPolyline(spot, drawn)!.distanceMetres;
        expect(distance).toBeGreaterThanOrEqual(swept(facing, permitted, drawn) - 1e-9);
      },
    ),
    { numRuns: 2000 },
  );
});

test('the computed distance is reached: a fine sampling of the rim comes within its own spacing of it', () => {
  fc.assert(
    fc.property(reach, bearing, line, (permitted, facing, drawn) => {
      const computed = swept(facing, permitted, drawn);
      let sampled = Number.POSITIVE_INFINITY;
      for (const [turnAbout, radius] of [
        [0, Math.max(permitted.poleMetres, permitted.castMetres)],
        [180, permitted.poleMetres],
      ] as const) {
        for (let i = 0; i <= 240; i++) {
          for (let j = 0; j <= 40; j++) {
            const spot = pointAlong(
              PLATFORM,
              facing + turnAbout + (i / 240 - 0.5) * permitted.sectorDegrees,
              (j / 40) * radius,
            );
            sampled = Math.min(sampled, footOnPolyline(spot, drawn)!.distanceMetres);
          }
        }
      }
      expect(sampled - computed).toBeLessThan(2);
    }),
    { numRuns: 60 },
  );
});

test('a longer pole, a longer cast or a wider sector never brings more distance', () => {
  const more = fc.double({ min: 0, max: 30, noNaN: true });
  fc.assert(
    fc.property(reach, more, more, more, bearing, line, (permitted, pole, cast, sector, facing, drawn) => {
      const wider = {
        poleMetres: permitted.poleMetres + pole,
        castMetres: permitted.castMetres + cast,
        sectorDegrees: permitted.sectorDegrees + sector,
      };
      expect(swept(facing, wider, drawn)).toBeLessThanOrEqual(swept(facing, permitted, drawn) + 1e-9);
    }),
    { numRuns: 1000 },
  );
});

test('turning peg and line together changes nothing', () => {
  fc.assert(
    fc.property(reach, bearing, bearing, line, (permitted, facing, turn, drawn) => {
      const cos = Math.cos((turn * Math.PI) / 180);
      const sin = Math.sin((turn * Math.PI) / 180);
      const turned = drawn.map(({ x, y }) => ({ x: x * cos + y * sin, y: y * cos - x * sin }));
      expect(swept(facing + turn, permitted, turned)).toBeCloseTo(swept(facing, permitted, drawn), 6);
    }),
    { numRuns: 1000 },
  );
});

test('the smaller of permission and record counts, in each respect by itself', () => {
  const permitted = { poleMetres: 16, castMetres: 40, sectorDegrees: 120 };
  expect(effectiveReach({ limits: {} }, permitted)).toEqual(permitted);
  expect(effectiveReach({ limits: { poleMetres: 11, castMetres: 60, sectorDegrees: 60 } }, permitted)).toEqual({
    poleMetres: 11,
    castMetres: 40,
    sectorDegrees: 60,
  });
});
